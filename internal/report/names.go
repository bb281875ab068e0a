package report

import (
	"math"

	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/planar"
)

// nameForces sets the force at the ends and where it is hardest beside the
// ribbon, with its range where there is room.
func (s *stage) nameForces(p placed, places [3]*facts) {
	for _, f := range places {
		if f.Name == middle {
			continue
		}
		text := f.Name + " " + s.u.Force(f.Force)
		if s.e.Band != nil && s.names.Bounds.W > roomy*s.text {
			in := s.e.Band.Between[f.K]
			text += " (" + between(in, s.u.force, columnPlaces(s.u.force, s.e.Curve.Lift)) + ")"
		}
		if math.Abs(f.Force) > p.full {
			text += ", far beyond the ribbon"
		}
		s.names.Add(p.edge(f.K, f.Force), text)
	}
}

// nameThirds writes the names of the thirds into the ribbon, all in one size,
// or beside it where they do not fit.
func (s *stage) nameThirds(p placed) {
	size := min(s.text, p.nameSize(s.text))
	for i, name := range thirdNames {
		k := p.middleOf(i)
		if math.IsNaN(p.force[k]) {
			continue
		}
		if size < 0.7*s.text {
			s.names.Add(p.edge(k, p.high[k]), name)
			continue
		}
		along := upright(p.tangent(k))
		at := p.edge(k, p.force[k]/2).Sub(draw.Towards(0.36*size, along+quarter))
		s.TurnedText(at, along, name, draw.Font{Size: size, Color: s.th.Ink}, draw.Centre)
	}
}

// nameSize returns the size of text, mm, at which the name of each third fits
// in the ribbon there.
func (p placed) nameSize(text float64) float64 {
	size := math.Inf(1)
	ends := []int{0, p.third[0], p.third[1], len(p.base) - 1}
	for i, name := range thirdNames {
		k := p.middleOf(i)
		if math.IsNaN(p.force[k]) {
			continue
		}
		long := p.edge(ends[i], p.force[k]/2).Sub(p.edge(ends[i+1], p.force[k]/2)).Norm()
		wide := math.Abs(p.force[k]) * p.perNewton
		em := draw.Font{Size: 1}.Measure(name)
		size = min(size, (long-0.5*text)/em, wide/1.4)
	}
	return size
}

// middleOf returns the position in the middle of third i.
func (r ribbon) middleOf(i int) int {
	ends := []int{0, r.third[0], r.third[1], len(r.base) - 1}
	return (ends[i] + ends[i+1]) / 2
}

var thirdNames = []string{"lengthened", "middle", "shortened"}

// upright turns a direction of writing so that it is not upside down.
func upright(a planar.Angle) planar.Angle {
	a = a.Normalized()
	if math.Abs(float64(a)) > float64(quarter)+1e-9 {
		a += math.Pi
	}
	return a
}

// nameStretches names where there is no force and where it helps.
func (s *stage) nameStretches(p placed) {
	for _, g := range gapsOf(&s.e.Curve) {
		s.names.Add(p.edge((g.first+g.last)/2, 0), g.words())
	}
	first := -1
	for k := range len(p.force) + 1 {
		helps := k < len(p.force) && p.force[k] < 0
		if helps && first < 0 {
			first = k
		}
		if !helps && first >= 0 {
			mid := (first + k - 1) / 2
			s.names.Add(p.edge(mid, p.force[mid]), "the machine pushes on here")
			first = -1
		}
	}
}

// nameParts names what the eye asks about: the axis, the contact, the loads,
// cams, springs and the links.
func (s *stage) nameParts(f *facts) {
	s.names.Add(s.frame.At(f.At), s.m.Contact.Name)
	for i := range s.m.Weights {
		if w := &s.m.Weights[i]; w.Mass > 0 {
			s.names.Add(s.frame.At(f.State.Pose(w.Link).Point(w.At)), w.Name+" "+s.u.Mass(w.Mass))
		}
	}
	if axis, ok := sketch.Pinned(s.m)(s.m.Contact.Link); ok && !s.isPath(s.m.Contact.Link) {
		s.names.Add(s.frame.At(axis), "axis of rotation")
	}
	s.nameLines(f)
	if len(s.m.Links) <= namedLinks {
		s.nameLinks(f)
	}
	for i := range s.m.Chains {
		c := &s.m.Chains[i]
		top := f.State.Pose(c.Link).Point(c.At)
		s.names.Add(s.frame.At(planar.Vec{X: top.X, Y: (top.Y + c.Floor) / 2}), c.Name)
	}
}

// namedLinks is up to how many links are named: the parts of a larger linkage
// mean little to who stands before it, and hide the picture.
const namedLinks = 4

func (s *stage) nameLinks(f *facts) {
	for i, l := range s.m.Links {
		if l.Path || isStack(s.m, linkID(i+1)) || l.Name == s.m.Contact.Name {
			continue
		}
		if pieces := piecesOf(s.m, linkID(i+1)); len(pieces) > 0 {
			at := f.State.Pose(linkID(i + 1)).Point(pieces[0][0].Lerp(pieces[0][1], 0.5))
			s.names.Add(s.frame.At(at), l.Name)
		}
	}
}

// nameLines names springs and their like, and cams.
func (s *stage) nameLines(f *facts) {
	for i, line := range s.m.Lines() {
		if line.Element != nil {
			piece := f.State.Spans(i)[0]
			s.names.Add(s.frame.At(piece.From.Lerp(piece.To, 0.5)), line.Name)
		}
		for k, st := range line.Route {
			if _, isRound := sketch.Sheave(st.Outline); st.Outline != nil && !isRound {
				axis, _ := f.State.Station(i, k)
				s.names.Add(s.frame.At(axis), st.Name+" cam")
			}
		}
	}
}
