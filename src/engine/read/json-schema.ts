/** The book's schema for editors. */
import * as z from 'zod';
import { infoOf, type KeyInfo } from '../../contract/index.ts';
import { dimensions } from '../../kernel/index.ts';

type Json = Record<string, unknown>;

/** A number and something beside it, so that an editor marks a bare number at once. */
const withUnit = '^(?![-+−±\\d\\s.,/]*$).*\\d';

const quantityIn = (info: KeyInfo): Json => {
  const unitless = dimensions.some(({ name, bare }) => bare && name === info.of);
  const value: Json = unitless ? { type: ['string', 'number'] } : { type: 'string', pattern: withUnit };
  return {
    anyOf: [
      { ...value, examples: [info.example] },
      {
        type: 'object',
        properties: { is: value, from: { enum: ['stated', 'measured', 'plate', 'datasheet', 'table', 'guess'] } },
        required: ['is'],
        additionalProperties: false,
      },
    ],
  };
};

const ranges = {
  spread: 'A range says that all values occur.',
  doubt: 'A range says that the one value is not known better.',
  exact: 'One value, no range.',
} as const;

const describe = (info: KeyInfo): string => {
  const of = dimensions.find(({ name }) => name === info.of);
  const kind = info.form === 'quantity' && of ? ` (${of.words})` : '';
  const range = info.form === 'quantity' && info.range ? ` ${ranges[info.range]}` : '';
  const refers = info.refers ? ` Names one of the ${info.refers}.` : '';
  return `${info.means}${kind}.${range}${refers}`;
};

const leafIn = (info: KeyInfo): Json => {
  if (info.form === 'quantity') return quantityIn(info);
  if (info.form === 'count')
    return {
      type: 'integer',
      minimum: info.from ?? 1,
      ...(info.to === undefined ? {} : { maximum: info.to }),
      examples: [Number(info.example)],
    };
  if (info.form === 'yes-no') return { type: 'boolean' };
  if (info.form === 'word') return { enum: info.words };
  const one: Json = { type: 'string', examples: [info.example] };
  return info.many ? { anyOf: [one, { type: 'array', items: { type: 'string' } }] } : one;
};

/** Draft 2020-12 of a book schema: what an author writes, with meaning and example of each key. */
export const jsonSchemaOf = (schema: z.ZodType): object => {
  const made = z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-2020-12',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      const info = infoOf(zodSchema as unknown as z.ZodType);
      if (!info || 'const' in jsonSchema) return;
      for (const key of Object.keys(jsonSchema)) delete (jsonSchema as Json)[key];
      Object.assign(jsonSchema, { description: describe(info), ...leafIn(info) });
    },
  });
  return { ...made, title: 'Gantrybook book' };
};
