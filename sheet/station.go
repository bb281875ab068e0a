package sheet

import (
	"fmt"

	"steelyard/exercise"
	"steelyard/mechanism"
)

// placing is how a person meets the machine, with its names resolved.
type placing struct {
	what                          exercise.Station // all but its points and numbers
	at, feet, axis                pointID
	trunk, thigh, bend, padRadius num
	width, height, forward, flare num
	plate                         num
}

var (
	backSlope = measure{angle.dim, angle.bare, -0.6, 3.8, "a back slopes from -30° to 215° from the floor; 90° is upright"}
	slope     = measure{angle.dim, angle.bare, -3.2, 3.2, "a slope is -180° to 180°"}
	flareOut  = measure{angle.dim, angle.bare, -1.6, 3.2, "elbows or knees point -90° to 180° outwards"}
	bendOf    = measure{angle.dim, angle.bare, 0, 2.7, "a joint is bent by 0° to 150°"}
	padDepth  = measure{length.dim, length.bare, 0, 0.3, "a pad's radius is 0 mm to 300 mm"}
	apart     = measure{length.dim, length.bare, 0, 3, "hands or feet are 0 mm to 3 m apart"}
)

// anchors are the keys of which one tells where the body is.
var anchors = []struct {
	key  string
	kind exercise.Anchor
}{
	{"seat", exercise.SeatAnchor}, {"bench", exercise.BenchAnchor}, {"standing at", exercise.FeetAnchor},
	{"kneeling at", exercise.KneesAnchor}, {"hips", exercise.HipsAnchor},
}

// readStation reads `station:`, which a sheet need not have.
func (r *reader) readStation(n *node) {
	if n == nil {
		return
	}
	f := r.fields(n, "station", "")
	s := &placing{at: nowhere}
	st := &s.what
	r.listed(f.must("serves", "write the exercise, such as serves: leg press"), "serves of station", func(n *node) {
		if x, ok := exercise.ParseExercise(n.text); ok {
			st.Exercises = append(st.Exercises, x)
			return
		}
		names := exercise.ExerciseNames()
		r.fault(n, fmt.Sprintf("serves of station is %s", seen(n)), "the exercises are "+orList(names), r.suggest(n.text, names, "write one of these"))
	})
	if len(st.Exercises) > 0 {
		st.Posture = st.Exercises[0].Posture()
	}
	r.readPosture(f, s)
	r.readLimbs(f, s)
	r.readMeeting(f, s)
	f.close()
	st.Contact = contactOf(r.plan.contact.kind)
	if st.Contact == exercise.Pad && st.On == exercise.NoPart {
		r.fault(n, "the contact is a pad, and the station does not say on what", "a pad bears on a part of the body", "add on: shank, thigh, upper arm, trunk, shoulders, hips or knees")
	}
	r.plan.station = s
}

// readPosture reads how and where the body is.
func (r *reader) readPosture(f *fields, s *placing) {
	st := &s.what
	if name := f.choice("posture", exercise.PostureNames()...); name != "" {
		st.Posture = exercise.Posture(indexOf(exercise.PostureNames(), name))
	}
	st.FacesBack = f.choice("faces", "forward", "back") == "back"
	st.FromFront = f.choice("drawn", "from the side", "from in front") == "from in front"
	keys := make([]string, len(anchors))
	for i, a := range anchors {
		keys[i] = a.key
		if id := f.point(a.key); id != nowhere {
			s.at, st.Anchor = id, a.kind
		}
	}
	f.onlyOne(keys...)
	if s.at == nowhere && st.Anchor == exercise.NoAnchor && r.plan.contact.kind != Pad {
		r.fault(f.node, "station does not say where the body is", "it takes one of "+orList(keys), "add seat: and the name of a point")
	}
	f.onlyOne("back pad", "trunk")
	if st.BackPad = f.has("back pad"); st.BackPad {
		s.trunk = f.number("back pad", backSlope)
		f.take("trunk")
	} else {
		s.trunk = f.number("trunk", backSlope)
		f.take("back pad")
	}
	s.thigh = f.number("thighs", slope)
}

// readLimbs reads what works and how it is held.
func (r *reader) readLimbs(f *fields, s *placing) {
	s.what.OneLimb = f.choice("works", "both", "one") == "one"
	s.width, s.height, s.forward = f.number("width", apart), f.number("height", place), f.number("forward", place)
	f.onlyOne("elbows out", "knees out")
	s.flare = f.number("elbows out", flareOut)
	if knees := f.number("knees out", flareOut); knees != none {
		s.flare = knees
	}
	s.what.Rests = f.yes("rests")
	s.bend = f.number("bend", bendOf)
}

// readMeeting reads how the contact meets the limb.
func (r *reader) readMeeting(f *fields, s *placing) {
	st := &s.what
	if name := f.choice("on", exercise.PartNames()[1:]...); name != "" {
		st.On = exercise.Part(indexOf(exercise.PartNames(), name))
	}
	s.padRadius = f.number("pad radius", padDepth)
	feet := []string{"middle", "heel", "ball"}
	if name := f.choice("foot", feet...); name != "" {
		st.Foot = exercise.Foot(indexOf(feet, name))
	}
	s.plate = f.number("plate", slope)
	s.feet, s.axis = f.point("feet"), f.point("in line with")
	if s.feet == nowhere && (st.On == exercise.OnShoulders || st.On == exercise.OnHips || st.On == exercise.OnKnees) {
		r.fault(f.node, fmt.Sprintf("station bears on the %v and does not say where the feet stand", st.On), "the ground pushes back under the feet", "add feet: and the name of a point on the ground")
	}
}

// contactOf returns package exercise's word for a kind of contact.
func contactOf(k ContactKind) exercise.Contact {
	return map[ContactKind]exercise.Contact{Grip: exercise.Grip, Pad: exercise.Pad, FootPlate: exercise.FootPlate,
		Strap: exercise.Strap, RopeHandle: exercise.RopeHandle, Held: exercise.Held}[k]
}

func indexOf(list []string, name string) int {
	for i, s := range list {
		if s == name {
			return i
		}
	}
	return 0
}

// Station returns how a person meets the machine with its settings chosen, and
// whether the sheet says so.
func (b *Built) Station() (exercise.Station, bool) {
	s := b.plan.station
	if s == nil {
		return exercise.Station{}, false
	}
	v := b.plan.nominal()
	at := b.plan.places(v)
	st := s.what
	optional := func(n num) exercise.Optional { return exercise.Optional{Value: v.at(n), Given: n != none} }
	if s.at != nowhere {
		st.At = at[s.at]
	}
	if s.feet != nowhere {
		st.Feet, st.HasFeet = at[s.feet], true
	}
	if s.axis != nowhere {
		st.Axis, st.HasAxis = at[s.axis], true
	}
	st.Trunk = st.Posture.Trunk()
	if s.trunk != none {
		st.Trunk = v.angle(s.trunk)
	}
	st.Thigh, st.Bend, st.PadRadius = v.angle(s.thigh), v.angle(s.bend), v.at(s.padRadius)
	st.Width, st.Height, st.Forward, st.Flare, st.Plate = optional(s.width), optional(s.height), optional(s.forward), optional(s.flare), optional(s.plate)
	return st, true
}

// station tells how a person meets the machine, or that nothing says so.
func (t *teller) station() {
	s := t.plan.station
	if s == nil {
		return
	}
	names := make([]string, len(s.what.Exercises))
	for i, x := range s.what.Exercises {
		names[i] = x.String()
	}
	where := ""
	if s.at != nowhere {
		where = fmt.Sprintf(", placed by %q", t.plan.pointName(s.at))
	}
	t.understood("a person is %v on it%s, for the %s", s.what.Posture, where, list(names, " and "))
	if j := t.plan.drive.joint; s.axis == nowhere && s.what.Contact == exercise.Pad && s.what.On < exercise.OnShoulders && t.plan.joints[j].kind == mechanism.Revolute {
		t.missing("which axis the body's joint should be in line with is not given, so nothing is said about that")
	}
}
