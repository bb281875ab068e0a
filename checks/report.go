package checks

import (
	"fmt"
	"io"
	"text/tabwriter"
)

// Worst keeps, of the differences of one machine name, engine and quantity, the
// one that is relatively greatest.
func Worst(list []Difference) []Difference {
	type key struct{ machine, engine, quantity string }
	at := map[key]int{}
	var out []Difference
	for _, d := range list {
		k := key{d.Machine, d.Engine, d.Quantity}
		i, ok := at[k]
		switch {
		case !ok:
			at[k] = len(out)
			out = append(out, d)
		case d.Relative() > out[i].Relative():
			out[i] = d
		}
	}
	return out
}

// WriteTable prints one line for each difference.
func WriteTable(w io.Writer, list []Difference) error {
	tw := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(tw, "machine\tengine\tquantity\tgreatest value\tgreatest difference\trelative\tallowed\tverdict")
	for _, d := range list {
		verdict := "agrees"
		if !d.OK() {
			verdict = "DIFFERS"
		}
		fmt.Fprintf(tw, "%s\t%s\t%s\t%.4g %s\t%.1e %s\t%.1e\t%.0e\t%s\n",
			d.Machine, d.Engine, d.Quantity, d.Scale, d.Unit, d.Greatest, d.Unit, d.Relative(), d.Allowed, verdict)
	}
	return tw.Flush()
}
