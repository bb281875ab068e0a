package profile

import (
	"fmt"
	"math"
	"strconv"
)

// Formatter writes quantities, given in SI units, as the reader wants them.
type Formatter interface {
	Force(newtons float64) string
	Length(metres float64) string
	Work(joules float64) string
	Mass(kilograms float64) string
}

// Metric writes N, cm or m, J and kg.
type Metric struct{}

func (Metric) Force(n float64) string { return rounded(n) + " N" }
func (Metric) Work(j float64) string  { return rounded(j) + " J" }
func (Metric) Mass(kg float64) string { return tenths(kg) + " kg" }
func (Metric) Length(m float64) string {
	if math.Abs(m) < 1 {
		return rounded(m*100) + " cm"
	}
	return fmt.Sprintf("%.2f m", m)
}

// Imperial writes lbf, in, ft·lbf and lb.
type Imperial struct{}

// Exact by definition. Source: NIST Special Publication 811, 2008, appendix
// B.8; the pound-force is the pound times 9.80665 m/s².
const (
	inch      = 0.0254          // m
	pound     = 0.45359237      // kg
	poundf    = pound * 9.80665 // N
	footPound = poundf * 0.3048 // J
)

func (Imperial) Force(n float64) string  { return rounded(n/poundf) + " lbf" }
func (Imperial) Length(m float64) string { return tenths(m/inch) + " in" }
func (Imperial) Work(j float64) string   { return rounded(j/footPound) + " ft·lbf" }
func (Imperial) Mass(kg float64) string  { return tenths(kg/pound) + " lb" }

// rounded keeps whole numbers from 10 up and one decimal below.
func rounded(x float64) string {
	if math.Abs(x) >= 9.95 {
		return strconv.FormatFloat(math.Round(x), 'f', 0, 64)
	}
	return tenths(x)
}

// tenths keeps at most one decimal, and no minus before a zero.
func tenths(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10+0, 'f', -1, 64)
}

func percent(share float64) string {
	return strconv.FormatFloat(math.Round(share*100)+0, 'f', 0, 64) + " %"
}
