// Package checks sweeps the same machines through general-purpose engines and
// prints how well they agree.
//
// It is a module of its own so that building and testing Steelyard never needs
// an engine. run.sh installs what the engines need, builds them and runs the
// tests here; without them the tests fail, they are not skipped.
//
//	engine     asked for                            from
//	Simbody    linkages: pose, rates, holding force,  Debian, libsimbody-dev
//	           every joint's reaction, effective mass
//	MuJoCo     ropes over round sheaves, linkages     npm, mujoco-js (WebAssembly)
//	SciPy      ropes over outlines of any shape, by   Debian, python3-scipy
//	           the shortest string round a polygon;
//	           springs, bands and chains by energy
//
// No engine shares code with another. What each cannot do it refuses.
//
// Frame: x forward, y up, counter-clockwise positive. Everything is in SI
// units; angles are in radians. Every point is given in the ground frame at
// the measured pose, and a link's pose is its motion since then.
package checks
