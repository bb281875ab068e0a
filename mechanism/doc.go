// Package mechanism computes a resistance machine: links, joints, ropes over
// sheaves and cams, and loads, moving in one plane with one freedom.
//
// # Method
//
// A [Machine] is described in one assembled pose, as measured. [Compile]
// checks it, finds its one freedom and orders its links into groups that can
// be placed one after another ([Model]). A [State] then follows the driver:
// pose, rates, forces, inertia. [Model.Sweep] tabulates the whole travel.
//
// The files are the stages:
//
//	machine.go  law.go          what the user described
//	check.go  checkroute.go     whether it can be computed
//	freedom.go  compile.go      one freedom, groups in order
//	state.go  linear.go         the workspace, and its equations
//	pose.go dyad.go newton.go   where everything is
//	line.go                     and every rope and spring along a route
//	rates.go                    how it moves per unit of driver
//	force.go  statics.go        what holds it: virtual work and equilibrium
//	rubbing.go  friction.go     what lifts it and what lets it down
//	inertia.go  tempo.go        what it takes to move it in time
//	sweep.go follow.go stops.go the table from stop to stop, and why it stops
//	sensitivity.go  drift.go    what each measured number does to the curve
//	share.go  shape.go          what to name and draw
//	errors.go                   what a coach is told
//
// # Frame, units, signs
//
// One ground frame: x forward, y up, seen from the person's right side,
// counter-clockwise positive. SI units throughout. Each link's own frame is the
// ground frame at the measured pose, so a link's [planar.Motion] takes the
// place where a point was measured to where it is now.
//
//	driver coordinate     q    rad or m   turn of the driven joint from the measured pose
//	travel                s    m          along the contact's path from the start, ≥ 0
//	contact force         F    N          from the body on the machine, along the path;
//	                                      positive when the body must push towards the end
//	joint reaction             N, N·m     on the joint's second link by its first, ground frame
//	rope tension          T    N          ≥ 0; a rope only pulls
//	lift ratio            -    1          distance the load travels over distance the contact travels
//	effective mass        m    kg         Σ m(dx/ds)² + I(dθ/ds)²
//
// Lifting runs from the start of the travel to its end, lowering back again.
package mechanism

// Gravity is standard gravity in m/s², exact: 3rd General Conference on
// Weights and Measures (1901), resolution 2.
const Gravity = 9.80665
