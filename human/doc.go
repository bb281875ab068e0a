// Package human is the person a machine is for: what a tape measured and what
// a survey fills in, segments with mass, joints with angles and limits, the
// moment a joint can produce, and how long a muscle is in a posture.
//
// Ground frame: x forward, y up, z to the right of a person who faces +x, so
// that the side view is seen from the person's right and counter-clockwise is
// positive about z. SI units throughout; angles are [planar.Angle] in radians.
//
// Anatomical angles. Zero is standing with the arms hanging, palms forward and
// feet square. They are not geometric angles; the left side mirrors the right.
//
//	quantity             zero                positive sense        geometry (right side)
//	shoulder elevation   arm hanging         arm rises             turn about down × arm
//	shoulder plane       straight out        forward, across       turn about +y
//	shoulder rotation    forearm forward     lateral (outward)     turn about the upper arm
//	elbow flexion        straight            bends                 turn about upper arm × forearm
//	hip flexion          thigh in line       thigh forward         turn about pelvis +z
//	hip abduction        thigh in line       thigh outward         turn about thigh × z
//	hip rotation         knee bends back     lateral (outward)     turn about the thigh
//	knee flexion         straight            heel goes back        turn about thigh × shank
//	ankle dorsiflexion   foot square         toes rise             turn about minus the knee axis
//	trunk flexion        pelvis and chest in line   chest forward  turn about -z
//
// The words and zeros follow the recommendations of the International Society
// of Biomechanics (Wu et al. 2002, J Biomech 35:543; Wu et al. 2005, J Biomech
// 38:981; from memory) except at the shoulder, where rotation is counted from
// the arm swung straight to its place, so that it does not jump when the arm
// hangs: a lateral turn of the upper arm is this rotation plus the plane of
// elevation, and the recommended axial rotation, inward positive, its reverse.
//
// A joint moment is internal and acts on the distal segment, by muscles and
// whatever else crosses the joint. Its components are positive in the sense of
// the angle of the same name.
//
// Every figure that did not come from this person carries a source and a
// [reference.Mark]; most strength of the upper body rests on memory or on our
// own interpolation and is marked so. This is a model, not a measurement of
// safety.
package human
