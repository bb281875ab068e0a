package quantity

import "strings"

// spoken holds the ways each unit is written, in small letters, in the form
// that unitKey brings a text to: products joined by *, no spaces, no ^.
var spoken = [...]struct {
	unit  Unit
	forms string
}{
	{Percent, "% percent pct"},

	{Millimetre, "mm millimetre millimetres millimeter millimeters"},
	{Centimetre, "cm centimetre centimetres centimeter centimeters"},
	{Metre, "m metre metres meter meters"},
	{Inch, "in inch inches \" ''"},
	{Foot, "ft foot feet '"},

	{Kilogram, "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes"},
	{Gram, "g gram grams gramme grammes"},
	{Pound, "lb lbs lbm pound pounds"},

	{Newton, "n newton newtons"},
	{Kilonewton, "kn kilonewton kilonewtons"},
	{KilogramForce, "kgf kg*force kilogram*force kilograms*force"},
	{PoundForce, "lbf lbsf lb*force lbs*force pound*force pounds*force"},

	{Degree, "deg degs degree degrees"},
	{Radian, "rad rads radian radians"},
	{Turn, "turn turns rev revs revolution revolutions"},

	{Second, "s sec secs second seconds"},
	{Millisecond, "ms msec millisecond milliseconds"},
	{Minute, "min mins minute minutes"},

	{NewtonPerMillimetre, "n/mm kn/m newton/millimetre newtons/millimetre"},
	{NewtonPerMetre, "n/m newton/metre newtons/metre"},
	{PoundForcePerInch, "lbf/in lb/in lbs/in pound/inch pounds/inch lbf/inch lb/inch lbs/inch"},

	{NewtonMetrePerDegree, "nm/deg n*m/deg nm/degree n*m/degree"},
	{NewtonMetrePerRadian, "nm/rad n*m/rad nm/radian n*m/radian"},
	{PoundForceInchPerDegree, "lbf*in/deg in*lbf/deg lb*in/deg in*lb/deg in*lbs/deg"},

	{NewtonMetre, "nm n*m newton*metre newton*metres newton*meter newton*meters"},
	{PoundForceFoot, "lbf*ft ft*lbf lb*ft lbs*ft ft*lb ft*lbs foot*pound foot*pounds pound*feet"},
	{PoundForceInch, "lbf*in in*lbf lb*in lbs*in in*lb in*lbs inch*pound inch*pounds"},

	{KilogramPerMetre, "kg/m kg/metre kg/meter"},
	{PoundPerFoot, "lb/ft lbs/ft lb/foot lbs/foot pound/foot pounds/foot"},

	{KilogramSquareMetre, "kg*m2 kgm2"},

	{NewtonSecondPerMetre, "n*s/m ns/m"},

	{Megapascal, "mpa megapascal megapascals n/mm2"},
	{Kilopascal, "kpa kilopascal kilopascals"},
	{Pascal, "pa pascal pascals n/m2"},
	{PoundPerSquareInch, "psi lbf/in2 lb/in2 lbs/in2"},
}

// byForm finds a unit by its form; it is filled once and only read after.
var byForm = func() map[string]Unit {
	m := make(map[string]Unit)
	for _, row := range spoken {
		for form := range strings.FieldsSeq(row.forms) {
			m[form] = row.unit
		}
	}
	return m
}()

// longestForm is the room for a unit's form in bytes; no form is longer.
const longestForm = 24

// unitKey appends to dst the form under which the unit written in token is
// kept, and reports whether it fits in longestForm bytes.
func unitKey(dst, token []byte) ([]byte, bool) {
	product := false // a space, dot, dash or * stands before the next letter
	for _, c := range token {
		switch {
		case c == ' ' || c == '.' || c == '-' || c == '*':
			product = true
			continue
		case c == '^':
			continue
		case 'A' <= c && c <= 'Z':
			c += 'a' - 'A'
		}

		if product && len(dst) > 0 && c != '/' && dst[len(dst)-1] != '/' {
			dst = append(dst, '*')
		}
		product = false
		dst = append(dst, c)
		if len(dst) > longestForm {
			return dst, false
		}
	}
	return dst, true
}

// nearest returns the unit of dimension d whose form is closest to the mistyped
// key, or NoUnit if none is close enough to be worth proposing: one slip in up
// to four letters, two in more, and at least one letter right.
func nearest(key string, d Dimension) Unit {
	limit := 2
	if len(key) <= 4 {
		limit = 1
	}

	best, least := NoUnit, min(limit+1, len(key))
	for _, row := range spoken {
		if row.unit.Dimension() != d {
			continue
		}
		for form := range strings.FieldsSeq(row.forms) {
			if n := slips(key, form); n < least {
				best, least = row.unit, n
			}
		}
	}
	return best
}

// slips returns the number of letters left out, put in, changed or swapped with
// their neighbour that turn a into b. Both are at most longestForm bytes.
//
// Source: Damerau (1964), "A technique for computer detection and correction of
// spelling errors", Communications of the ACM 7(3), 171-176; computed as the
// optimal string alignment distance, in which no part is edited twice.
func slips(a, b string) int {
	var d [longestForm + 1][longestForm + 1]int
	for i := range len(a) + 1 {
		d[i][0] = i
	}
	for j := range len(b) + 1 {
		d[0][j] = j
	}

	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(a)][len(b)]
}
