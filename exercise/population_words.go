package exercise

import (
	"fmt"
	"strings"

	"steelyard/reference"
)

// Words tells the outcome, a sentence each.
func (c *Coverage) Words() []string {
	words := []string{fmt.Sprintf("At some setting the machine fits %s of %s drawn: %s.", percent(c.All), number(c.Draws)+" people", sampling(c.All))}
	if c.Women.People > 0 && c.Men.People > 0 {
		words = append(words, fmt.Sprintf("Women %s, men %s.", percent(c.Women), percent(c.Men)))
	}
	fits := fmt.Sprintf("Fitting means that over %.0f %% of the travel or more the body reaches the contact and no joint passes its usual range", 100*c.Enough)
	if c.HasAxis {
		fits += fmt.Sprintf(", with the joint within %.0f mm of the machine's axis", 1000*c.Within)
	}
	words = append(words, fits+".")
	words = append(words, c.search())
	if c.Examined > 0 {
		words = append(words, c.causes()...)
	}
	if c.All.Served == 0 {
		words = append(words, "Before believing that a machine fits nobody, check where the sheet puts seat, pads and feet: a point a hand's breadth off does this.")
	}
	return words
}

func percent(s Served) string { return fmt.Sprintf("%.1f %%", 100*s.Share()) }

func sampling(s Served) string {
	low, high := s.Between()
	return fmt.Sprintf("%.1f %% to %.1f %% if more were drawn", 100*low, 100*high)
}

func (c *Coverage) search() string {
	s := fmt.Sprintf("All %s choices of the settings were tried", number(c.Possible))
	switch {
	case c.Possible == 1:
		return "There is nothing to choose: the machine was tried as it is set."
	case c.Tried < c.Possible:
		s = fmt.Sprintf("%s of %s choices of the settings were tried, at evenly spaced values", number(c.Tried), number(c.Possible))
	}
	s += fmt.Sprintf("; they put the body in %s.", counted(c.Places, "different place"))
	if c.Failed > 0 {
		s += fmt.Sprintf(" The machine itself cannot be set to %s of them.", number(c.Failed))
	}
	return s
}

// causes tells what keeps people from fitting, the three most frequent of each.
func (c *Coverage) causes() []string {
	share := func(n int) string { return fmt.Sprintf("%.0f %%", 100*float64(n)/float64(c.Examined)) }
	var why, way []string
	for _, r := range c.Reasons[:min(3, len(c.Reasons))] {
		if 100*r.People < c.Examined && len(why) > 0 {
			break // less than one in a hundred
		}
		why = append(why, fmt.Sprintf("%s (%s)", r.Text, share(r.People)))
	}
	for _, d := range c.Dimensions[:min(3, len(c.Dimensions))] {
		way = append(way, fmt.Sprintf("%v too %s (%s)", d.Dimension, longOrShort(d.Long), share(d.People)))
	}
	of := "those it does not fit"
	if c.Examined == mostExamined {
		of = fmt.Sprintf("the first %d it does not fit", c.Examined)
	}
	out := []string{fmt.Sprintf("Of %s, at their least bad setting: %s.", of, strings.Join(why, "; "))}
	if len(way) == 0 {
		return append(out, "No single body dimension keeps them out: an average one alone would not let them in.")
	}
	return append(out, fmt.Sprintf("The dimension in the way, in that an average one for the sex would let them in: %s.", strings.Join(way, "; ")))
}

func longOrShort(long bool) string {
	if long {
		return "long"
	}
	return "short"
}

// Limits tells what the count does not know.
func (c *Coverage) Limits() []string {
	return []string{
		"The people are drawn from the means and covariances of a survey of soldiers aged 17 to 58 (2012), chosen for fitness and weight: not of older people, of children or of everybody in a gym.",
		"Everyone is given the usual range of motion of the sex, from published tables; the stiff and the supple are not in it.",
		"Whether somebody fits says nothing of whether the exercise is right for them.",
	}
}

// SexWord returns how the people are named: women, men or both.
func SexWord(s reference.Sex) string { return [...]string{"both", "women", "men"}[s] }

// ParseSexWord is the reverse of SexWord.
func ParseSexWord(name string) (reference.Sex, error) {
	for s := reference.Unstated; s <= reference.Male; s++ {
		if SexWord(s) == name {
			return s, nil
		}
	}
	return 0, fmt.Errorf("the sex %q is unknown; choose women, men or both", name)
}
