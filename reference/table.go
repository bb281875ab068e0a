package reference

import (
	"embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
)

//go:embed data/*.csv
var data embed.FS

// row is one line of an embedded table, read by column name. A column that is
// missing or malformed is our own fault and panics with its place.
type row struct {
	table  string
	line   int
	column map[string]int
	cells  []string
}

// rows reads the embedded table data/name.
func rows(name string) []row {
	f, err := data.Open("data/" + name)
	if err != nil {
		panic(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("reference: %s: %v", name, err))
	}
	column := make(map[string]int)
	for i, h := range all[0] {
		column[h] = i
	}
	out := make([]row, 0, len(all)-1)
	for i, cells := range all[1:] {
		out = append(out, row{name, i + 2, column, cells})
	}
	return out
}

func (r row) text(column string) string {
	i, ok := r.column[column]
	if !ok {
		panic(fmt.Sprintf("reference: %s has no column %s", r.table, column))
	}
	return r.cells[i]
}

func (r row) number(column string) float64 {
	v, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil {
		panic(fmt.Sprintf("reference: %s:%d: %v", r.table, r.line, err))
	}
	return v
}

// numberOrNaN returns NaN for an empty cell: the source gives no figure.
func (r row) numberOrNaN(column string) float64 {
	if r.text(column) == "" {
		return math.NaN()
	}
	return r.number(column)
}

func (r row) source() Source {
	return Source{Text: r.text("source"), Mark: parseMark(r.text("mark"))}
}
