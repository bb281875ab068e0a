package evaluation

import (
	"encoding/csv"
	"io"
	"strconv"
)

// WriteCSV writes the curve as comma-separated values (RFC 4180), one row for
// each position, SI units in the heading, empty cells in a gap.
func (e *Evaluation) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	c := e.columns()
	low, high := make([]*float64, len(c.Hold)), make([]*float64, len(c.Hold))
	if b := e.bandDocument(); b != nil {
		low, high = b.Low, b.High
	}
	head := []string{"driver_" + c.DriverUnit, "travel_m", "contact_x_m", "contact_y_m", "hold_N", "lift_N", "lower_N",
		"lift_low_N", "lift_high_N", "load_travel_m", "lift_ratio", "effective_mass_kg", "gap"}
	if err := out.Write(head); err != nil {
		return err
	}
	for i := range c.Hold {
		gap := ""
		if c.Gap[i] != nil {
			gap = *c.Gap[i]
		}
		row := []string{number(&c.Driver[i]), number(&c.Travel[i]), number(&c.Contact[i][0]), number(&c.Contact[i][1]),
			number(c.Hold[i]), number(c.Lift[i]), number(c.Lower[i]), number(low[i]), number(high[i]),
			number(&c.LoadTravel[i]), number(c.LiftRatio[i]), number(c.Mass[i]), gap}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

func number(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'g', 12, 64)
}
