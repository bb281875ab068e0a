package report

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/exercise"
	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/planar"
)

// bodyJoint is a joint a coach would name, at one place of the travel: all of
// its axes together.
type bodyJoint struct {
	name     string
	at       r3.Vec  // m
	distal   r3.Vec  // towards the next joint
	angle    string  // as told beside it
	moment   r3.Vec  // N·m, internal, on the distal segment
	greatest float64 // effort of its hardest axis
	asked    float64 // N·m, of that axis
	known    bool    // some axis has a known strength
	untested bool    // taken beyond what its source tested
}

// joints returns the body joints that are asked, from the trunk outwards.
func (f *figureOf) joints() []bodyJoint {
	var out []bodyJoint
	ph := &f.Meeting.Rest.Lifting
	for k := range ph.Joints {
		c := &ph.Joints[k]
		name := c.Joint.Body()
		if len(out) == 0 || out[len(out)-1].name != name {
			out = append(out, f.newJoint(c.Joint))
		}
		j := &out[len(out)-1]
		j.moment = r3.Add(j.moment, r3.Scale(c.Moment[f.row], f.axisOf(c.Joint)))
		if c.Available[f.row] > 0 && (!j.known || c.Effort[f.row] > j.greatest) {
			j.known, j.greatest, j.asked, j.untested = true, c.Effort[f.row], abs(c.Moment[f.row]), c.Stretched[f.row]
		}
	}
	return out
}

func (f *figureOf) newJoint(j exercise.Joint) bodyJoint {
	q := f.Placement.Limb
	deg := func(a planar.Angle) string { return decimal(a.Degrees(), 0) + "°" }
	out := bodyJoint{name: j.Body()}
	switch j {
	case exercise.Elbow:
		out.at, out.distal, out.angle = q.Mid, r3.Sub(q.End, q.Mid), deg(f.Placement.Arm.Elbow)
	case exercise.Hip, exercise.HipSide:
		out.at, out.distal, out.angle = q.Root, r3.Sub(q.Mid, q.Root), deg(f.Placement.Leg.HipFlexion)
		if x := f.Meeting.Rest.Setup.Exercise; x == exercise.HipAbduction || x == exercise.HipAdduction {
			out.angle = deg(f.Placement.Leg.HipAbduction) + " out"
		}
	case exercise.Knee:
		out.at, out.distal, out.angle = q.Mid, r3.Sub(q.End, q.Mid), deg(f.Placement.Leg.Knee)
	case exercise.Ankle:
		out.at, out.distal, out.angle = q.End, f.Placement.Toe, deg(f.Placement.Leg.Ankle)
	case exercise.Trunk:
		out.at, out.distal, out.angle = f.Placement.Trunk.Origin, f.Placement.Trunk.Y, ""
	default:
		out.at, out.distal, out.angle = q.Root, r3.Sub(q.Mid, q.Root), deg(f.Placement.Arm.Elevation)
	}
	return out
}

// axisOf returns the unit axis about which a joint's angle grows, as package
// human has it.
func (f *figureOf) axisOf(j exercise.Joint) r3.Vec {
	t, q := &f.Placement.Trunk, &f.Placement.Limb
	u := r3.Unit(r3.Sub(q.Mid, q.Root))
	raise := r3.Cross(u, t.Y)
	if n := r3.Norm(raise); n > 1e-6 {
		raise = r3.Scale(1/n, raise)
	} else {
		raise = t.Z // hanging or overhead: the plane is taken as forward
	}
	switch j {
	case exercise.ShoulderRaising:
		return raise
	case exercise.ShoulderAcross:
		return r3.Cross(raise, u)
	case exercise.ShoulderTurning:
		return u
	case exercise.Hip:
		return t.Z
	case exercise.HipSide:
		return r3.Unit(r3.Cross(u, t.Z))
	case exercise.Ankle:
		return r3.Scale(-1, q.Hinge)
	case exercise.Trunk:
		return r3.Scale(-1, t.Z)
	}
	return q.Hinge
}

// Size of a moment's arc about its joint, in ems and as half its opening.
const (
	arcRadius = 1.5
	arcHalf   = 75 * planar.Degree
)

// leastMoment is the share of the greatest moment of a figure below which no
// arc is drawn.
const leastMoment = 0.05

// drawJoints draws centres, angles, moments in the picture's plane and the arms
// of the contact force.
func (s *stage) drawJoints(f *figureOf) {
	all := f.joints()
	most := 0.0
	for _, j := range all {
		most = max(most, abs(r3.Dot(j.moment, f.Out())))
	}
	push := f.Meeting.Rest.Lifting.Push[f.row]
	for _, j := range all {
		at := s.frame.At(f.On(j.at))
		s.Fill(draw.Circle(at, 0.3*s.text), s.th.Paper)
		s.Stroke(draw.Circle(at, 0.3*s.text), s.pen(0.18, s.th.Person))
		label := j.name
		if j.angle != "" {
			label += " " + j.angle
		}
		s.names.Add(at, label)
		seen := r3.Dot(j.moment, f.Out())
		if most > 0 && abs(seen) > leastMoment*most {
			middle := f.Seen(j.distal).Angle()
			half := planar.Angle(math.Copysign(float64(arcHalf), seen))
			s.ArcArrow(at, arcRadius*s.text, middle-half, middle+half, s.pen(0.22, s.th.Lower))
			s.names.AvoidLine(draw.Circle(at, arcRadius*s.text))
			s.forceArm(f, j.at, push)
		}
	}
	s.forceLine(f, push)
}

// forceArm draws the arm of the contact force about a joint, as it is seen.
func (s *stage) forceArm(f *figureOf, joint, push r3.Vec) {
	line := f.Seen(push)
	if line.Norm() < 1 { // N: it points at who looks
		return
	}
	axis, at := f.On(joint), f.On(f.bears())
	foot := sketch.Perpendicular(axis, at, line.Unit())
	a := sketch.Arm{Axis: axis, Foot: foot, Acts: at}
	if s.frame.Len(a.Length()) < 0.8*s.text {
		return
	}
	s.extension(at, foot)
	from, to := s.frame.At(axis), s.frame.At(foot)
	across := draw.Polyline(from, to)
	s.Stroke(across, s.pen(0.16, s.th.Arm))
	s.names.AvoidLine(across)
	s.armLength(a, from, to)
}

// bears returns where the contact force acts on the body.
func (f *figureOf) bears() r3.Vec {
	st := &f.Meeting.Rest.Setup.Station
	switch {
	case f.Placement.Sole != (r3.Vec{}) && st.On != exercise.NoPart:
		return f.Placement.Sole
	case st.Contact == exercise.Pad:
		return r3.Sub(f.Placement.Contact, r3.Scale(st.PadRadius, f.Placement.Normal))
	}
	return f.Placement.Contact
}

// pushLength is the length of the arrow of the contact force, in ems.
const pushLength = 3.5

// forceLine draws the force on the body, of one limb, with its size.
func (s *stage) forceLine(f *figureOf, push r3.Vec) {
	line := f.Seen(push)
	if line.Norm() < 1 {
		return
	}
	tip := s.frame.At(f.On(f.bears()))
	tail := tip.Sub(draw.Towards(pushLength*s.text, line.Angle()))
	s.Arrow(tail, tip, s.pen(0.3, s.th.Load))
	s.names.AvoidLine(draw.Polyline(tail, tip))
	s.names.Add(tail, s.u.Force(r3.Norm(push)))
}
