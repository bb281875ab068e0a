// Package draw is the one drawing layer: a scene is recorded once and written
// as SVG, PDF or PNG.
//
// A Scene holds pages; a Page records filled and stroked paths, lines of text,
// clipped groups, titled layers and links. On top of that vocabulary stand the
// drawings every report needs: symbols of a machine (arrow, pin, ground, rope,
// spring, dimension), the load ribbon, axes with curves and bands, labels that
// keep out of each other's way, wrapped paragraphs, tables and a Flow that
// fills pages from top to bottom. Nothing here knows mechanics.
//
// Frame of a page: millimetres, x to the right, y down, origin at the top left
// corner. Angles are as they look on paper: zero to the right,
// counter-clockwise positive. A Frame maps the ground frame (metres, y up) to
// the page.
//
// Text is DejaVu Sans, embedded: Latin, Greek, Cyrillic, Armenian, Georgian
// and the signs of mathematics. Missing tells what it cannot set, among it
// scripts written from right to left; PDF and PNG draw a box there, SVG leaves
// the character to the reader's own fonts, and all three writers say so.
// The same scene gives the same bytes on every run. The PDF is not tagged.
package draw
