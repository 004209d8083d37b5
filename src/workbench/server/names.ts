/** Which names a book's files and a new book's folder may have. */

/** Marks that make a name read as another one. */
const MISLEADING = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u;
const LONGEST_NAME = 200;
const MOST_LEVELS = 8;

/** Names that some systems keep for devices. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;

const isSegment = (segment: string): boolean =>
  segment !== '' &&
  segment.length <= LONGEST_NAME &&
  !/^\.|[\\:*?"<>|]|[. ]$/.test(segment) &&
  !DEVICES.test(segment) &&
  !MISLEADING.test(segment);

/** Whether something can be a text of a book: a plain path below its folder, hidden nowhere, that ends as YAML does. */
export const isTextName = (name: string): boolean => {
  const segments = name.split('/');
  return segments.length <= MOST_LEVELS && segments.every(isSegment) && /\.ya?ml$/i.test(name);
};

/** Why a folder cannot have this name, or nothing when it can. */
export const objectionTo = (name: string): string | undefined => {
  if (name === '') return 'A new book needs a name; its folder gets it.';
  if (name.length > 64) return 'This name is too long for a folder: 64 letters at most.';
  if (!/^[\p{L}\p{N}][\p{L}\p{M}\p{N} ._-]*$/u.test(name) || /[. ]$/.test(name))
    return 'A folder is named with letters, digits, spaces, - _ and . here, and begins with a letter or digit: my-machine would do.';
  return DEVICES.test(name) ? `${name} is the name of a device on some systems. Choose another.` : undefined;
};
