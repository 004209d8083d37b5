export * from './scalars.ts';
export * from './schema.ts';
export * from './view.ts';
export * from './topology.ts';
export * from './document.ts';
export * from './discipline.ts';
export * from './services.ts';
export * from './cases.ts';
