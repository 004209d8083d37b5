/** The book's text in ink: tones of the paper that it stands on, weights instead of many colours. */
import { HighlightStyle, syntaxHighlighting } from '@codemirror/language';
import { EditorView } from '@codemirror/view';
import { tags } from '@lezer/highlight';
import { monoFamily, textFamily } from '../../../figures/style.ts';

const inks = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: 'var(--ink)', fontWeight: '600' },
  { tag: [tags.string, tags.content, tags.literal, tags.number, tags.attributeValue], color: 'var(--accent)' },
  { tag: [tags.comment, tags.lineComment], color: 'var(--soft)', fontStyle: 'italic' },
  { tag: [tags.punctuation, tags.separator, tags.bracket, tags.squareBracket, tags.brace], color: 'var(--soft)' },
  { tag: [tags.meta, tags.labelName, tags.typeName], color: 'var(--open)' },
]);

const slip = {
  border: '1px solid var(--ink)',
  borderRadius: '0',
  backgroundColor: 'var(--paper)',
  color: 'var(--ink)',
  fontFamily: textFamily,
  fontSize: '14px',
  lineHeight: '1.4',
};

const theme = EditorView.theme({
  '&': { height: '100%', backgroundColor: 'transparent', color: 'var(--ink)', fontSize: '13px' },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': { fontFamily: monoFamily, lineHeight: '1.55', overflow: 'auto' },
  '.cm-content': { caretColor: 'var(--ink)', padding: '10px 0 40vh' },
  '.cm-cursor, .cm-dropCursor': { borderLeftColor: 'var(--ink)', borderLeftWidth: '2px' },
  '.cm-line': { padding: '0 12px 0 10px' },
  '.cm-gutters': {
    backgroundColor: 'transparent',
    color: 'var(--soft)',
    borderRight: '1px solid var(--hair)',
    fontVariantNumeric: 'tabular-nums',
  },
  '.cm-activeLine': { backgroundColor: 'color-mix(in srgb, var(--tone) 60%, transparent)' },
  '.cm-activeLineGutter': { backgroundColor: 'var(--tone)', color: 'var(--ink)' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': {
    background: 'color-mix(in srgb, var(--accent) 26%, transparent)',
  },
  '.cm-pointed': { boxShadow: 'inset 0 -2px 0 var(--accent)' },
  '.cm-tooltip': slip,
  '.cm-tooltip.cm-tooltip-autocomplete > ul': { fontFamily: monoFamily, fontSize: '13px', maxHeight: '16em' },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': { padding: '3px 10px', lineHeight: '1.5' },
  '.cm-tooltip-autocomplete ul li[aria-selected]': { background: 'var(--accent)', color: 'var(--paper)' },
  '.cm-completionInfo': { ...slip, padding: '6px 10px', maxWidth: '34ch' },
  '.cm-key-help': { padding: '6px 10px', maxWidth: '44ch' },
  '.cm-key-help p': { margin: '0' },
  '.cm-key-help .path': { fontFamily: monoFamily, fontSize: '12px', color: 'var(--soft)' },
  '.cm-diagnostic': { borderLeft: '0', padding: '6px 10px', maxWidth: '56ch', whiteSpace: 'pre-wrap' },
  '.cm-lintRange-error': {
    backgroundImage: 'none',
    textDecoration: 'underline wavy var(--fails) 1px',
    textUnderlineOffset: '3px',
  },
  '.cm-lintRange-warning': {
    backgroundImage: 'none',
    textDecoration: 'underline dotted var(--tight) 2px',
    textUnderlineOffset: '3px',
  },
  '.cm-panels': { backgroundColor: 'var(--paper)', color: 'var(--ink)', borderColor: 'var(--ink)' },
  '.cm-panels input, .cm-panels button': {
    font: `13px ${textFamily}`,
    color: 'var(--ink)',
    background: 'var(--paper)',
    backgroundImage: 'none',
    border: '1px solid var(--soft)',
    borderRadius: '0',
  },
  '.cm-searchMatch': { backgroundColor: 'color-mix(in srgb, var(--tight) 30%, transparent)' },
  '.cm-matchingBracket, &.cm-focused .cm-matchingBracket': {
    backgroundColor: 'var(--tone)',
    outline: '1px solid var(--soft)',
  },
});

export const look = [theme, syntaxHighlighting(inks)];
