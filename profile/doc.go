// Package profile reads a resistance curve: where along the travel a machine
// loads, how much, how evenly, how surely, and how it compares with another.
//
// It knows nothing of machines. A [Curve] is plain columns over the travel of
// the contact (where the body meets the machine); whoever computes or measures
// one fills it in.
//
//	quantity       symbol  unit  sense
//	travel         s       m     along the contact's path, 0 where the muscle is lengthened, ascending
//	travel share   u       1     s over the whole travel, 0 to 1
//	force          F       N     at the contact along its path, positive resists lifting
//	load travel    q       m     path travelled by the load from the start
//	work           W       J     ∫F ds, positive when the person works on the machine
//
// The thirds of the travel are called lengthened, middle and shortened after
// the muscle: a lifting stroke shortens it, so the travel starts lengthened.
//
// Between positions the force is taken as a straight line, and every integral
// is the exact integral of that line. Against a smooth curve the error of a
// mean is at most h² max|F″| / 12, with h the spacing: 0.008 % for half a sine
// at 101 positions (E. Isaacson, H. B. Keller, Analysis of Numerical Methods,
// 1966, section 7.1, trapezoidal rule, from memory). Only the place and size
// of the peak and of the least force are refined, by the parabola through
// three neighbours.
//
// A position without a force (dead point, slack rope, out of reach) is a gap.
// Gaps are never bridged: work, means and thirds cover what has a force, and
// say how much of the travel that is.
//
// Uncertainty follows JCGM 100:2008 (GUM): a measurement's ± is its expanded
// uncertainty with coverage factor k = 2 (6.3), and so is every ± given back.
// [Linear] combines exact derivatives by the root sum of squares (equation
// 10). [Sampled] propagates distributions in the sense of JCGM 101:2008 and is
// right where the first order is not, near a dead point above all.
package profile
