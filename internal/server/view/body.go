package view

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/human"
	"steelyard/internal/server/api"
	"steelyard/planar"
)

// body is a person at one row of the sweep, seen square to the machine's plane:
// the right side.
type body struct {
	m      *evaluation.Meeting
	p      *exercise.Placement
	origin planar.Vec // of the contact on the sheet
	x, y   r3.Vec     // the plane's axes in space
	out    api.Body
}

// bodyAt returns the person at a row; nil if there is none.
func bodyAt(e *evaluation.Evaluation, row int) *api.Body {
	m := e.Person
	if m == nil || !m.Rest.Faults[row].Placed() {
		return nil
	}
	b := body{m: m, p: &m.Rest.Placements[row], origin: e.Sweep.Contact[row], out: api.Body{Segments: []api.Segment{}, Joints: []api.BodyJoint{}}}
	sin, cos := math.Sincos(float64(e.Model.Machine().Plane.Tilt))
	b.x, b.y = r3.Vec{X: 1}, r3.Vec{Y: cos, Z: sin}
	if m.Rest.Setup.Station.FromFront {
		b.x, b.y = r3.Vec{Z: 1}, r3.Vec{Y: 1}
	}
	b.trunk()
	if b.p.Toe == (r3.Vec{}) {
		b.idleLeg()
		b.arm()
	} else {
		b.leg()
	}
	return &b.out
}

// on returns where a point of space is seen on the sheet.
func (b *body) on(v r3.Vec) api.Place {
	d := r3.Sub(v, b.p.Contact)
	return place(b.origin.Add(planar.Vec{X: r3.Dot(d, b.x), Y: r3.Dot(d, b.y)}))
}

// Half thicknesses of segments over the height of the person, for the eye only.
const (
	trunkThick    = 0.060
	neckThick     = 0.022
	headThick     = 0.055
	headBelow     = 0.068 // centre of the head below the crown
	thighThick    = 0.044
	kneeThick     = 0.030
	ankleThick    = 0.020
	footThick     = 0.014
	shoulderThick = 0.032
	elbowThick    = 0.023
	wristThick    = 0.017
)

func (b *body) add(name string, from, to r3.Vec, near, far float64, works bool) {
	h := b.m.Person.Person.Height
	b.out.Segments = append(b.out.Segments, api.Segment{Name: name, From: b.on(from), To: b.on(to), Near: metres(near * h), Far: metres(far * h), Works: works})
}

func (b *body) joint(name string, at r3.Vec) {
	b.out.Joints = append(b.out.Joints, api.BodyJoint{Name: name, At: b.on(at)})
}

func (b *body) trunk() {
	l, t := &b.m.Body.Links, &b.p.Trunk
	shoulders := t.Point(r3.Vec{Y: l.Trunk})
	head := t.Point(r3.Vec{Y: l.HipToCrown - headBelow*b.m.Person.Person.Height})
	b.add("trunk", t.Origin, shoulders, trunkThick, trunkThick, false)
	b.add("neck", shoulders, head, neckThick, neckThick, false)
	b.add("head", head, head, headThick, headThick, false)
}

func (b *body) arm() {
	q := b.p.Limb
	b.add("upper arm", q.Root, q.Mid, shoulderThick, elbowThick, true)
	b.add("forearm", q.Mid, q.End, elbowThick, wristThick, true)
	b.joint("shoulder", q.Root)
	b.joint("elbow", q.Mid)
}

func (b *body) leg() {
	q := b.p.Limb
	b.add("thigh", q.Root, q.Mid, thighThick, kneeThick, true)
	b.add("shank", q.Mid, q.End, kneeThick, ankleThick, true)
	heel, toe := b.m.Body.SolePoint(q, b.p.Toe, 0), b.m.Body.SolePoint(q, b.p.Toe, b.m.Body.Links.Foot)
	b.add("foot", heel, toe, footThick, footThick, true)
	b.joint("hip", q.Root)
	b.joint("knee", q.Mid)
	b.joint("ankle", q.End)
}

// idleLeg hints at a leg that does not work: as the posture has it.
func (b *body) idleLeg() {
	l, t, st := &b.m.Body.Links, &b.p.Trunk, &b.m.Rest.Setup.Station
	forward := math.Copysign(1, t.X.X)
	thigh, shank := r3.Scale(-1, t.Y), r3.Vec{Y: -1}
	switch st.Posture {
	case exercise.Seated:
		sin, cos := math.Sincos(float64(st.Thigh))
		thigh = r3.Vec{X: forward * cos, Y: sin}
	case exercise.Standing, exercise.LyingOnFront:
		shank = thigh
	case exercise.Kneeling:
		shank = r3.Vec{X: -forward}
	}
	hip := t.Hip(*l, human.Right)
	knee := r3.Add(hip, r3.Scale(l.Thigh, thigh))
	b.add("thigh", hip, knee, thighThick, kneeThick, false)
	b.add("shank", knee, r3.Add(knee, r3.Scale(l.Shank, shank)), kneeThick, ankleThick, false)
}
