// Package evaluation puts a measured machine through the engine and reads the
// result: sheet → mechanism → profile, with error bands, reasons and, at a
// tempo, the force in time. [Evaluation.Meet] puts a person on it, [Adjust]
// readies its settings for a search. Verbs, reports and the page all show what
// one [Evaluation] holds; none computes anything of its own.
//
// Units are SI and the frame is that of package mechanism. Nothing here touches
// a disk, a socket or a clock.
package evaluation
