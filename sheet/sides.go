package sheet

import (
	"fmt"
	"math"

	"steelyard/planar"
)

// faces gives the direction in which each face of a sheave looks.
var faces = map[string]planar.Angle{"over": quarterTurn, "under": -quarterTurn, "in front of": 0, "behind": math.Pi}

const (
	// faceReach is how far in rad the face named may lie off the part of the
	// outline that the rope touches: words are coarse, and a rope that comes
	// steeply down on a drum's front still goes over it.
	faceReach = 5 * math.Pi / 12
	// missed is the wrap in rad that a rope which just misses a sheave may lack.
	missed = math.Pi / 4
	// clearly is the least difference in rad by which one side has to fit the
	// word better than the other.
	clearly = math.Pi / 180
	// backed is the length of arc in rad behind the end of a rope that is fixed
	// to an outline in which the face named may lie too.
	backed = math.Pi / 2
)

// passing is how a rope would lie on an outline that is on one side of it.
type passing struct {
	side    planar.Side
	arrives planar.Angle // outward normal where it first touches
	wrap    float64      // rad on from there, the rope's way round, ≥ 0
}

// misfit returns how badly the passing fits the face named, and how far off the
// touched part that face lies, both in rad. More than half a turn round is
// unlikely, so it counts as misfit twice over.
func (p passing) misfit(face planar.Angle) (misfit, off float64) {
	on := fullTurn(float64(p.side) * float64(face-p.arrives))
	if on > p.wrap {
		off = min(on-p.wrap, 2*math.Pi-on)
	}
	return off + 2*max(0, p.wrap-math.Pi), off
}

// fullTurn brings an angle to [0, 2π).
func fullTurn(a float64) float64 {
	a = math.Mod(a, 2*math.Pi)
	if a < 0 {
		a += 2 * math.Pi
	}
	return a
}

// bend is a station on a sheave or cam with its neighbours: nil beyond an end.
type bend struct {
	before, after *planar.Vec // places of the neighbours, from the outline's middle
	radius        float64     // m, of a circle as long as the outline
}

// on returns how the rope lies if the outline is on the given side.
//
// A rope from a point at distance d touches a circle on its left along a
// direction asin(r/d) clockwise of that to its middle, with the outward normal
// a quarter turn clockwise of the rope; mirrored on the right.
func (b bend) on(side planar.Side) passing {
	s := planar.Angle(side)
	var arrives, leaves planar.Angle
	if b.before != nil {
		arrives = b.before.Neg().Angle() - s*(b.slant(*b.before)+quarterTurn)
	}
	if b.after != nil {
		leaves = b.after.Angle() + s*(b.slant(*b.after)-quarterTurn)
	}
	switch {
	case b.before == nil:
		return passing{side, leaves - s*backed, backed}
	case b.after == nil:
		return passing{side, arrives, backed}
	}
	wrap := fullTurn(float64(s * (leaves - arrives)))
	if wrap > 2*math.Pi-missed {
		wrap = 0 // it just misses the outline
	}
	return passing{side, arrives, wrap}
}

func (b bend) slant(to planar.Vec) planar.Angle {
	return planar.Angle(math.Asin(min(1, b.radius/max(to.Norm(), b.radius))))
}

// side returns the side that the word for a face means, and whether it tells.
func (b bend) side(face planar.Angle) (planar.Side, bool) {
	left, right := b.on(planar.Left), b.on(planar.Right)
	misfitLeft, offLeft := left.misfit(face)
	misfitRight, offRight := right.misfit(face)
	if misfitLeft < misfitRight {
		return planar.Left, offLeft <= faceReach && misfitRight-misfitLeft > clearly
	}
	return planar.Right, offRight <= faceReach && misfitLeft-misfitRight > clearly
}

// setSides turns the words of a route into sides, with points at their places
// and outlines as long as given.
func (r *reader) setSides(l routed, at []planar.Vec, outlines []planar.Outline) {
	for i := range l.route {
		s := &l.route[i]
		if s.outline == noOutline {
			continue
		}
		switch s.pass {
		case "clockwise round":
			s.side = planar.Right
			continue
		case "counter-clockwise round":
			s.side = planar.Left
			continue
		}
		b := bend{radius: outlines[s.outline].Length(2*math.Pi) / (2 * math.Pi)}
		if i > 0 {
			d := at[l.route[i-1].point].Sub(at[s.point])
			b.before = &d
		}
		if i+1 < len(l.route) {
			d := at[l.route[i+1].point].Sub(at[s.point])
			b.after = &d
		}
		var ok bool
		if s.side, ok = b.side(faces[s.pass]); !ok {
			r.fault(l.node.items[i], fmt.Sprintf("%s passes %s %q", l.what, s.pass, s.name), "the way it runs before and after fits neither side of that",
				"check the word and the places, or write clockwise round or counter-clockwise round, as seen from the person's right going along the list")
		}
	}
}
