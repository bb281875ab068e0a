package exercise

import (
	"context"
	"errors"
	"math"
	"reflect"
	"slices"

	"steelyard/human"
	"steelyard/reference"
)

// crowd is a population check under way.
type crowd struct {
	out    *Coverage
	within float64
	enough float64
	people []human.Drawn
	ranges map[reference.Sex]human.Ranges
	places []rig     // that differ in where they put the body
	at     [][][]int // by dial and value: the places it can lead to
	fits   []bool    // by person, then place
}

// rig is a setup and the travel at its positions, m.
type rig struct {
	*Setup
	travel []float64
}

// settle sets the machine up for every choice and keeps what differs.
func (c *crowd) settle(ctx context.Context, dials []Dial, picks [][]int, build Build) error {
	out := c.out
	out.Tried = 1
	for d, dial := range out.Dials {
		c.at = append(c.at, make([][]int, len(dial.Values)))
		out.Tried *= len(picks[d])
	}
	var broken error
	choice, real := make([]int, len(dials)), make([]int, len(dials))
	for i := range out.Tried {
		if err := ctx.Err(); err != nil {
			return err
		}
		for d, k := len(dials)-1, i; d >= 0; d-- {
			choice[d] = k % len(picks[d])
			real[d] = picks[d][choice[d]]
			k /= len(picks[d])
		}
		s, sw, err := build(slices.Clone(real))
		if err != nil {
			out.Failed, broken = out.Failed+1, err
			continue
		}
		p := c.placeOf(rig{s, sw.Travel})
		for d, v := range choice {
			if !slices.Contains(c.at[d][v], p) {
				c.at[d][v] = append(c.at[d][v], p)
			}
		}
	}
	if len(c.places) == 0 {
		return errors.Join(errors.New("exercise: the machine can be set up for no choice of its settings"), broken)
	}
	out.Places, out.Exercise, out.HasAxis = len(c.places), c.places[0].Exercise, c.places[0].Station.HasAxis
	return nil
}

// placeOf returns the number of the place a setup puts the body in, a new one
// if none yet is the same.
func (c *crowd) placeOf(s rig) int {
	for i, p := range c.places {
		if p.Exercise == s.Exercise && p.space == s.space && p.Axis == s.Axis && slices.Equal(p.points, s.points) && reflect.DeepEqual(p.Station, s.Station) {
			return i
		}
	}
	c.places = append(c.places, s)
	return len(c.places) - 1
}

// tryOn fills in at which places person i fits.
func (c *crowd) tryOn(i int) {
	b := c.body(c.people[i])
	for p := range c.places {
		c.fits[i*len(c.places)+p] = c.places[p].suits(b, c.within, c.enough)
	}
}

func (c *crowd) body(d human.Drawn) *human.Body {
	return &human.Body{Links: human.LinksOf(d.Size), Ranges: c.ranges[d.Sex]}
}

// suits reports whether a body can use enough of the travel: it is without a
// fault, and its joint within so many metres of the machine's axis, over one
// stretch of that share, which has the middle of the travel in it if the share
// is above a half.
func (s *rig) suits(b *human.Body, within, enough float64) bool {
	first, last := s.stretch(b, within, enough)
	return s.used(first, last) >= enough-1e-9 // rounding
}

// stretch returns the first and last position of the stretch without a fault
// about the middle of the travel, or of so much of it as is enough; last is
// before first if there is none.
func (s *rig) stretch(b *human.Body, within, enough float64) (first, last int) {
	var pl Placement
	ok := func(i int) bool {
		f, off := s.misfit(&pl, b, i, within)
		return f.Kind == NoFault && off == 0
	}
	first = s.middle()
	if !ok(first) {
		return first, first - 1
	}
	for last = first; last+1 < len(s.travel) && ok(last+1); {
		last++
	}
	for first > 0 && s.used(first, last) < enough && ok(first-1) {
		first--
	}
	return first, last
}

func (s *rig) middle() int {
	half := s.travel[len(s.travel)-1] / 2
	return slices.IndexFunc(s.travel, func(x float64) bool { return x >= half })
}

// used returns the share of the travel from one position to another.
func (s *rig) used(first, last int) float64 {
	whole := s.travel[len(s.travel)-1]
	if last < first || whole <= 0 {
		return 0
	}
	return (s.travel[last] - s.travel[first]) / whole
}

// misfit returns what is wrong at a position: a fault, or by how much the joint
// is too far from the machine's axis, m.
func (s *Setup) misfit(pl *Placement, b *human.Body, i int, within float64) (f Fault, off float64) {
	f = s.Place(pl, b, i)
	if f.Kind == NotThere {
		return Fault{}, 0 // the machine's own gap is nobody's misfit
	}
	if f.Kind == NoFault && s.Station.HasAxis {
		off = max(0, s.misalignment(pl)-within)
	}
	return f, off
}

// count adds up whom the machine serves.
func (c *crowd) count() {
	out := c.out
	heights := make([][][]float64, len(out.Dials))
	for d, dial := range out.Dials {
		out.Values = append(out.Values, make([]ValueServed, len(dial.Values)))
		heights[d] = make([][]float64, len(dial.Values))
	}
	for i, person := range c.people {
		row := c.row(i)
		served := slices.Contains(row, true)
		out.All.add(served)
		if person.Sex == reference.Female {
			out.Women.add(served)
		} else {
			out.Men.add(served)
		}
		if !served {
			continue
		}
		for d := range out.Dials {
			only, n := 0, 0
			for v, places := range c.at[d] {
				if slices.ContainsFunc(places, func(p int) bool { return row[p] }) {
					only, n = v, n+1
					out.Values[d][v].Served++
					heights[d][v] = append(heights[d][v], person.Size[reference.Stature])
				}
			}
			if n == 1 {
				out.Values[d][only].Only++
			}
		}
	}
	for d := range heights {
		for v, h := range heights[d] {
			if len(h) < fewest {
				continue
			}
			slices.Sort(h)
			out.Values[d][v].Low, out.Values[d][v].High = quantile(h, 0.05), quantile(h, 0.95)
		}
	}
}

func (c *crowd) row(i int) []bool { return c.fits[i*len(c.places) : (i+1)*len(c.places)] }

func (s *Served) add(served bool) {
	s.People++
	if served {
		s.Served++
	}
}

// fewest is how many people must be served for one in 20 of them to be somebody.
const fewest = 20

// quantile returns the value below which a share of sorted numbers lie.
func quantile(sorted []float64, share float64) float64 {
	return sorted[int(math.Round(share*float64(len(sorted)-1)))]
}

// Matters reports whether the values of a dial serve different people.
func (c *Coverage) Matters(d int) bool {
	for _, v := range c.Values[d] {
		if v != c.Values[d][0] {
			return true
		}
	}
	return false
}
