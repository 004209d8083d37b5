/** What the desk's page may do, wherever it comes from: load and ask where it lies, and nowhere else. */
const everywhere = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types gantrybook',
];

/** For the page itself, which any server of files may send. */
export const pagePolicy = everywhere.join('; ');
/** For a header; only there a page can say who may frame it. */
export const deskPolicy = [...everywhere, "frame-ancestors 'none'"].join('; ');
