export { packOf, type ContentOptions } from './content.ts';
export { disk, type Disk } from './disk.ts';
export { typefaceFrom } from './html/index.ts';
export { MANIFEST, readManifest, type Manifest, type ManifestFile } from './manifest.ts';
export { diskTrouble, Refused } from './refused.ts';
export { bookWords, completed, reportOf, reportText, type Report, type ReportOptions } from './report.ts';
export { readPack, writePack, writeWhole, type Pack, type PackFile, type PackState } from './write.ts';
