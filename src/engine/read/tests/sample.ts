/** An invented trade with a few keys of each form, for tests of reading alone. */
import * as z from 'zod';
import { count, nameOf, oneOf, quantity, text, yesNo } from '../../../contract/index.ts';
import { assembleSchema, readBook, type NamedPart, type ReadOptions, type ReadResult } from '../index.ts';

export const trade: NamedPart = {
  name: 'lifting',
  schema: {
    top: {
      hanging: z.strictObject({
        below: quantity('length', { range: 'doubt', means: 'hook to centre of mass', example: '70 mm' }).optional(),
      }),
    },
    entries: {
      axes: {
        travel: quantity('length', { range: 'exact', means: 'travel between the ends', example: '560 mm' }),
        speed: quantity('speed', { range: 'exact', means: 'greatest speed', example: '220 mm/s' }),
        'moving-mass': quantity('mass', { range: 'doubt', means: 'mass that moves', example: '2.4..2.6 kg' }),
      },
      'axes/belt': {
        belt: nameOf('parts', { means: 'which belt it is', example: '2GT-6' }),
        'pulley-teeth': count({ means: 'teeth of the motor pulley', example: '20', from: 6, to: 400 }),
      },
      'axes/hoist': {
        drum: z.strictObject({
          diameter: quantity('length', { range: 'exact', means: 'diameter of the drum', example: '32 mm' }).optional(),
          smooth: yesNo({ means: 'no groove' }).optional(),
        }),
        unpowered: oneOf(['free', 'windings shorted'], { means: 'what holds it without power' }),
      },
      'axes/screw': { pitch: quantity('length', { range: 'exact', means: 'pitch of the screw', example: '5 mm' }) },
      'parts/stepper': {
        'holding-torque': quantity('torque', { range: 'doubt', means: 'torque that it holds', example: '1.1 N·m' }),
        'found-in': text({ means: 'where it comes from', example: 'an old printer' }),
      },
      'parts/belt': { pitch: quantity('length', { range: 'exact', means: 'tooth pitch', example: '2 mm' }) },
    },
  },
};

export const schema = assembleSchema([trade]);

export const readText = (book: string, options?: ReadOptions): ReadResult =>
  readBook((name) => (name === 'book.yaml' ? book : undefined), 'book.yaml', schema, options);

export const readFiles = (files: Readonly<Record<string, string>>, options?: ReadOptions): ReadResult =>
  readBook((name) => (Object.hasOwn(files, name) ? files[name] : undefined), 'book.yaml', schema, options);
