package exercise

import (
	"context"
	"fmt"
	"math"
	"slices"

	"steelyard/human"
	"steelyard/reference"
)

// PopulationPositions is the number of positions along the travel at which the
// people of a population check are placed.
const PopulationPositions = 11

// MostPlaces is the number of choices of the settings up to which a population
// check tries every one; of finer settings it takes evenly spaced values.
const MostPlaces = 500

// Nearby is how far from the machine's axis a joint may be for the machine to
// count as fitting, m, if nothing else is asked. Own choice, no source.
const Nearby = 0.030

// PopulationOptions says whom to try. The zero value is ready to use.
type PopulationOptions struct {
	Sex      reference.Sex // Unstated: women and men in turn
	Draws    int           // people; 0 is 10,000
	Seed     uint64
	Within   float64 // m, of a joint from the machine's axis; 0 is Nearby
	Enough   float64 // share of the travel that must be usable, above a half; 0 is Enough
	Held     []Chosen
	Workers  int                   // 0 is one for each processor
	Progress func(done, total int) // of people; may be nil
}

// Coverage tells what share of people a machine fits.
type Coverage struct {
	Exercise Exercise
	Dials    []Dial // with the values that were tried
	Held     []Chosen
	Sex      reference.Sex
	Draws    int
	Seed     uint64
	HasAxis  bool
	Within   float64 // m; with HasAxis
	Enough   float64 // share of the travel

	All, Women, Men Served
	Values          [][]ValueServed // by dial and value

	Examined   int        // people not served whose reasons were looked at
	Reasons    []Reason   // most frequent first
	Dimensions []InTheWay // most frequent first
	Possible   int        // choices of the settings there are
	Tried      int        // of them tried
	Places     int        // different places of the body among them
	Failed     int        // choices the machine cannot be set to
}

// Served is a count of people.
type Served struct{ People, Served int }

// Share is Served over People, 0 of nobody.
func (s Served) Share() float64 {
	if s.People == 0 {
		return 0
	}
	return float64(s.Served) / float64(s.People)
}

// Between returns the bounds of the share for drawing more people from the same
// survey, 19 times in 20. It knows nothing of how the survey differs from the
// people of a gym.
//
// Source: E. B. Wilson, "Probable inference, the law of succession, and
// statistical inference", J Am Stat Assoc 22 (1927) 209-212 (from memory).
func (s Served) Between() (low, high float64) {
	if s.People == 0 {
		return 0, 1
	}
	const z = 1.959964 // 97.5 % of a normal distribution
	n, p := float64(s.People), s.Share()
	mid := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return max(0, mid-half), min(1, mid+half)
}

// ValueServed is whom one value of a setting serves, the others standing where
// they suit best.
type ValueServed struct {
	Served    int
	Only      int     // of them, served by no other value of the setting
	Low, High float64 // m, height: one in 20 of them is shorter, one in 20 taller; 0 for fewer than 20 people
}

// Reason is what is wrong for people the machine does not fit, at the setting
// that is least bad for them.
type Reason struct {
	Text   string
	People int
}

// InTheWay is a body dimension that keeps people from fitting: how many would
// be served if only it were average for their sex.
type InTheWay struct {
	Dimension reference.Dimension
	Long      bool // more of them are above the average than below
	People    int
}

// Population draws people from the survey and counts whom the machine fits at
// some choice of its settings: over one stretch of o.Enough of the travel or more
// the body reaches the contact, no joint passes the usual range of motion of the
// sex, and the joint that should be in line with the machine's axis is within
// o.Within of it. The same input gives the same outcome whatever the number of
// workers.
//
// The settings are tried at PopulationPositions positions of the travel, which
// build must use, and beyond MostPlaces choices at evenly spaced values only.
// Choices that put the body in the same places are tried once.
func Population(ctx context.Context, dials []Dial, build Build, o PopulationOptions) (*Coverage, error) {
	if o.Draws == 0 {
		o.Draws = 10_000
	}
	if o.Enough == 0 {
		o.Enough = Enough
	}
	if o.Within == 0 {
		o.Within = Nearby
	}
	thin, picks, possible := thinned(dials)
	c := &crowd{within: o.Within, enough: o.Enough, people: draw(o), ranges: usualRanges()}
	c.out = &Coverage{Dials: thin, Held: o.Held, Sex: o.Sex, Draws: o.Draws, Seed: o.Seed, Within: o.Within, Enough: o.Enough, Possible: possible}
	if err := c.settle(ctx, dials, picks, build); err != nil {
		return nil, err
	}
	c.fits = make([]bool, len(c.people)*len(c.places))
	const batch = 100 // people between two reports of progress
	batches := (len(c.people) + batch - 1) / batch
	progress := func(done, _ int) {
		if o.Progress != nil {
			o.Progress(min(done*batch, len(c.people)), len(c.people))
		}
	}
	err := shareOut(ctx, batches, o.Workers, progress, func(k int) {
		for i := k * batch; i < min((k+1)*batch, len(c.people)); i++ {
			c.tryOn(i)
		}
	})
	if err != nil {
		return nil, err
	}
	c.count()
	if err := c.explain(ctx, o.Workers); err != nil {
		return nil, err
	}
	return c.out, nil
}

// thinned returns the dials with at most MostPlaces choices in all, by taking
// every second, third … value of the longest, ends included, and which values
// these are; and how many choices there were.
func thinned(dials []Dial) (thin []Dial, picks [][]int, possible int) {
	possible = 1
	n := make([]int, len(dials))
	for d := range dials {
		n[d] = len(dials[d].Values)
		possible = min(possible*n[d], 1<<40)
	}
	for product(n) > MostPlaces {
		n[slices.Index(n, slices.Max(n))]--
	}
	for d, dial := range dials {
		var pick []int
		t := Dial{Name: dial.Name}
		for k := range n[d] {
			v := 0
			if n[d] > 1 {
				v = (k*(len(dial.Values)-1) + (n[d]-1)/2) / (n[d] - 1)
			}
			pick = append(pick, v)
			t.Values = append(t.Values, dial.Values[v])
		}
		thin, picks = append(thin, t), append(picks, pick)
	}
	return thin, picks, possible
}

func product(n []int) int {
	p := 1
	for _, k := range n {
		p = min(p*k, 1<<40)
	}
	return p
}

// draw returns the people.
func draw(o PopulationOptions) []human.Drawn {
	s := human.NewSampler(o.Sex, o.Seed)
	people := make([]human.Drawn, o.Draws)
	for i := range people {
		people[i] = s.Draw()
	}
	return people
}

// usualRanges returns the published ranges of motion of women and of men whose
// age is not given.
func usualRanges() map[reference.Sex]human.Ranges {
	out := map[reference.Sex]human.Ranges{}
	for _, sex := range reference.Unstated.Halves() {
		row := &reference.SurveyOf(sex).Row
		b, _, err := human.NewBody(human.Person{Height: row[reference.Stature].Mean, Mass: row[reference.Mass].Mean, Sex: sex})
		if err != nil {
			panic(fmt.Sprintf("exercise: the survey's average person is refused: %v", err))
		}
		out[sex] = b.Ranges
	}
	return out
}
