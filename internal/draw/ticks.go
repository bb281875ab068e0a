package draw

import (
	"math"
	"strconv"
	"strings"
)

// Tick is a value to mark on an axis and how to print it.
type Tick struct {
	Value float64
	Label string
}

// ticksWanted is how many marks an axis aims at, few enough to read on a
// phone.
const ticksWanted = 6

// Ticks returns at most most marks (2 or more) between lo and hi, at whole
// multiples of 1, 2 or 5 times a power of ten, the smallest that fit. At least
// two are returned unless no such step falls twice in the range. Labels use a
// true minus sign and as many decimals as the step.
func Ticks(lo, hi float64, most int) []Tick {
	if !(hi > lo) || math.IsInf(hi-lo, 0) {
		return nil
	}
	step := tickStep(lo, hi, most)
	decimals := int(max(0, -math.Floor(math.Log10(step)+1e-9)))
	first, last := math.Ceil(lo/step-1e-9), math.Floor(hi/step+1e-9)

	var out []Tick
	for i := first; i <= last && len(out) < most; i++ {
		out = append(out, Tick{i * step, label(i*step, decimals)})
	}
	return out
}

// tickStep returns the smallest step of the series 1, 2, 5, 10 … that needs no
// more than most marks to cover lo to hi, ends widened to whole steps.
func tickStep(lo, hi float64, most int) float64 {
	most = max(most, 2)
	decade := math.Pow(10, math.Floor(math.Log10((hi-lo)/float64(most))))
	for _, m := range []float64{1, 2, 5, 10, 20} {
		step := m * decade
		if math.Ceil(hi/step-1e-9)-math.Floor(lo/step+1e-9) < float64(most) {
			return step
		}
	}
	return 50 * decade
}

func label(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if math.Abs(v) >= 1e7 || decimals > 6 && v != 0 {
		s = strconv.FormatFloat(v, 'g', 4, 64)
	}
	if strings.Trim(s, "-0.") == "" { // no minus on a rounded zero
		return strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, "-", "−", 1)
}
