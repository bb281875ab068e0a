package sheet

import "testing"

func TestClosest(t *testing.T) {
	allowed := []string{"mass", "centre", "inertia", "points", "upright", "at"}
	for _, c := range []struct{ name, want string }{
		{"mas", "mass"},      // left out
		{"masss", "mass"},    // put in
		{"nass", "mass"},     // changed
		{"amss", "mass"},     // swapped
		{"center", "centre"}, // swapped
		{"inertai", "inertia"},
		{"Points", "points"}, // capitals do not count
		{"uprihgts", "upright"},
		{"ta", "at"},
		{"weight", ""},
		{"", ""},
		{"3", ""},
		{"mass of the whole arm with its pad and everything else that hangs on it", ""},
	} {
		got, ok := closest(c.name, allowed)
		if got != c.want || ok != (c.want != "") {
			t.Errorf("%q: got %q, want %q", c.name, got, c.want)
		}
	}
}

// TestSlips takes the classic pairs for which the distance is common knowledge:
// kitten to sitting is 3, a swap is 1.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"kitten", "sitting", 3}, {"ab", "ba", 1}, {"ca", "abc", 3}, {"größe", "grösse", 2},
	} {
		if got := slips([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("%q to %q: got %d, want %d", c.a, c.b, got, c.want)
		}
		if got := slips([]rune(c.b), []rune(c.a)); got != c.want {
			t.Errorf("%q to %q: got %d, want %d", c.b, c.a, got, c.want)
		}
	}
}
