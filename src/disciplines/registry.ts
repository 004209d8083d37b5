/** The trades that make up the house, in any order: each knows its own place in the set. */
import type { Discipline } from '../contract/index.ts';
import { motion } from './motion/index.ts';
import { supply } from './supply/index.ts';
import { swing } from './swing/index.ts';

export const registry: readonly Discipline[] = [motion, swing, supply];
