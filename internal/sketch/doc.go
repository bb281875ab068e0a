// Package sketch reduces a machine, and the person on it, to the plain geometry
// that a drawing of them needs. Reports and the page draw the same: what they
// add is paper, ink and words, of which nothing is known here.
//
//	link.go             a link as straight pieces between its places
//	wheel.go  weight.go sheaves and cams, discs, hanging chains
//	place.go  arm.go    the machine at one place of its travel, and its moment arms
//	side.go             on which side of the contact's path a force is shown
//	person.go  body.go  the person seen from the side, as tapered segments
//
// Lengths are in m in the ground frame: x forward, y up, seen from the person's
// right, counter-clockwise positive. Points of links are those of the measured
// pose unless a place of the travel is named.
package sketch
