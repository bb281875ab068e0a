// Package family builds a machine sheet from the answers to a few questions.
//
// A family is a kind of machine: lever, four-bar, cam, sled. It is written down
// as a whole sheet with usual figures (sheets/) and a guided order of questions
// in a coach's words (questions.go); an answer replaces what stands in the sheet
// and leaves comments as they are. Answers may come from a photo, from a tape or
// from a slider: all are places and numbers with ±.
//
// What nobody should have to say is worked out: which way round a rope goes
// follows from where it comes from and goes to, and which way the machine turns
// is the way that lifts the load.
//
// Places are in m, x forward and y up, seen from the person's right, in the one
// pose in which everything was measured: the machine resting on its stop.
//
// Nothing here touches a disk, a socket or a clock.
package family
