/** Something that was asked for and cannot be done, through no fault of the program. The message is for the person. */
export class Refused extends Error {
  override readonly name = 'Refused';
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'you may not',
  EPERM: 'you may not',
  EROFS: 'nothing can be written there',
  ENOSPC: 'the disk is full',
  ENOENT: 'the folder is not there',
  ENOTDIR: 'a file stands where a folder belongs',
  EISDIR: 'a folder stands where a file belongs',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'links lead in a circle',
  EBUSY: 'another program holds it',
};

/** What an error of the file system means, in words; nothing for an error of any other kind. */
export const diskTrouble = (error: unknown): string | undefined => {
  if (!(error instanceof Error) || !('code' in error) || !('syscall' in error)) return undefined;
  return reasons[String(error.code)] ?? String(error.code);
};
