package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// Free squats: how upright the back is at the top, and how far the shins lean
// with the thighs level. Common practice, no source.
const (
	topSlope = 95 * deg
	shinLean = 30 * deg
	heelDrop = 0.02 // m, of the heel below the ball of the foot at the start of a calf raise
)

// bearOnShoulders lays a bar on the shoulders of a standing body.
func (w *way) bearOnShoulders(m *mechanism.Machine, st *Station, b *human.Body) {
	l := &b.Links
	st.Contact, st.On, st.Anchor, st.HasFeet, st.Loose = Pad, OnShoulders, NoAnchor, true, true
	back := l.Trunk + shoulderPad
	leg := l.Thigh + l.Shank
	var from, to planar.Vec
	if w.exercise == StandingCalfRaise {
		st.Foot = Ball
		a := l.HeelToBall - l.HeelToAnkle
		st.Feet = planar.Vec{X: a}
		standing := l.AnkleHeight + leg + back
		from, to = planar.Vec{X: a, Y: standing - heelDrop}, planar.Vec{X: a, Y: standing + 0.25*a}
	} else {
		st.TrunkEnd = Some(float64(topSlope))
		st.Feet = planar.Vec{X: l.Foot/2 - l.HeelToAnkle}
		sin := math.Sin(float64(st.Trunk))
		low := l.AnkleHeight + l.Shank*math.Cos(float64(shinLean)) + back*sin
		high := l.AnkleHeight + nearlyStraight*leg + back*math.Sin(float64(topSlope))
		from, to = planar.Vec{X: st.Feet.X, Y: low}, planar.Vec{X: st.Feet.X, Y: high}
	}
	m.Contact.At = from
	run(m, from, to)
}

// bearOnHips lays a bar on the hips of a body with its back against a bench a
// shank high.
func (w *way) bearOnHips(m *mechanism.Machine, st *Station, b *human.Body) {
	l := &b.Links
	st.Contact, st.On, st.Anchor, st.HasFeet = Pad, OnHips, BenchAnchor, true
	st.PadRadius = l.BackToHip
	st.At = planar.Vec{Y: 0.9 * l.Shank}
	hip := r3.Vec{X: 0.8 * l.Trunk, Y: l.AnkleHeight + l.Shank}
	st.Feet = planar.Vec{X: hip.X + l.Thigh + l.Foot/2 - l.HeelToAnkle}
	top := planar.Vec{X: hip.X, Y: hip.Y + l.BackToHip - 0.02}
	from := top.Sub(planar.Vec{Y: 0.5 * l.Trunk})
	m.Contact.At = from
	run(m, from, top)
}
