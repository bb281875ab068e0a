// Package planar is the plane geometry everything else stands on: vectors,
// angles, rigid motions, convex outlines round which a rope wraps, and the
// straight rope pieces between them.
//
// Frame: x forward, y up, seen from the person's right side, counter-clockwise
// positive. Lengths are in metres. Nothing here knows what a machine is.
//
// A rope is described piece by piece. Each [Wrapped] says which outline it
// passes, where that is and on which [Side] of the rope; [CommonTangent] gives
// the straight [Span] from one to the next, and [Arc] the rope lying on the
// outline between two spans. Their sum is the rope's length L, and when one
// body turns by dq about its origin,
//
//	dL/dq = Side · h(NormalTo)    for the outline a span runs to
//	dL/dq = -Side · h(NormalFrom) for the outline it comes from
//
// so that the support function h of an [Outline] is the rope's moment arm.
//
//	quantity   symbol  unit   sense
//	normal     φ       rad    direction of the outward normal in the body's frame
//	support    h       m      distance of the tangent from the frame's origin
//	direction  θ       rad    of travel along a span, in the ground frame
package planar
