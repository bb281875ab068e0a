// Package planar is the plane geometry everything else stands on: vectors,
// angles, rigid motions, circles that meet, and convex outlines round which a
// rope wraps.
//
// Frame: x forward, y up, seen from the person's right side, counter-clockwise
// positive. Lengths are in metres. Nothing here knows what a machine is.
package planar
