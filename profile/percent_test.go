package profile

import "testing"

// TestWholePercents wants no more than the whole, by hand.
func TestWholePercents(t *testing.T) {
	for _, c := range []struct {
		shares [whereCount]float64
		want   []int // at the start, evenly
	}{
		{[whereCount]float64{AtStart: 0.616, Evenly: 0.384}, []int{62, 38}},
		{[whereCount]float64{AtStart: 0.615, Evenly: 0.385}, []int{62, 38}},
		{[whereCount]float64{AtStart: 0.5, Evenly: 0.46}, []int{50, 46}},
	} {
		got := wholePercents(Verdict{c.shares}, []Where{AtStart, Evenly})
		if got[0]+got[1] > 100 || got[0] != c.want[0] {
			t.Errorf("shares %.3f and %.3f: got %v, want %v", c.shares[AtStart], c.shares[Evenly], got, c.want)
		}
	}
}
