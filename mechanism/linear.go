package mechanism

import "math"

// lu is a square system factored as P·A = L·U, small and dense: three rows for
// each link of a group. It serves motion (A·x = b) and, transposed, forces
// (Aᵀ·x = b) with the same factors.
type lu struct {
	n    int
	a    []float64 // n×n, row major; L below the diagonal, U on and above
	perm []int
	work []float64
}

func newLU(n int) lu {
	return lu{n: n, a: make([]float64, n*n), perm: make([]int, n), work: make([]float64, n)}
}

// singular is the ratio of smallest to largest pivot below which the matrix is
// taken as singular. Entries are of order 1 (directions) and 1 m (arms), so a
// group this close to a dead point multiplies errors by 1e9.
const singular = 1e-9

// factor factors a in place with partial pivoting. It returns the ratio of the
// smallest to the largest pivot, and false if that is below singular.
func (f *lu) factor() (float64, bool) {
	n, a := f.n, f.a
	least, most := math.Inf(1), 0.0
	for k := range n {
		p, best := k, math.Abs(a[k*n+k])
		for i := k + 1; i < n; i++ {
			if v := math.Abs(a[i*n+k]); v > best {
				p, best = i, v
			}
		}
		f.perm[k] = p
		least, most = min(least, best), max(most, best)
		if best == 0 || best != best {
			return 0, false
		}
		if p != k {
			rk, rp := a[k*n:k*n+n], a[p*n:p*n+n]
			for j := range rk {
				rk[j], rp[j] = rp[j], rk[j]
			}
		}
		pivot := 1 / a[k*n+k]
		upper := a[k*n+k+1 : k*n+n]
		for i := k + 1; i < n; i++ {
			if a[i*n+k] == 0 {
				continue
			}
			l := a[i*n+k] * pivot
			a[i*n+k] = l
			row := a[i*n+k+1 : i*n+n]
			for j, u := range upper {
				row[j] -= l * u
			}
		}
	}
	return least / most, least > singular*most
}

// solve replaces b by the solution of A·x = b.
func (f *lu) solve(b []float64) {
	n, a := f.n, f.a
	b = b[:n]
	for k, p := range f.perm {
		b[k], b[p] = b[p], b[k]
	}
	for i := 1; i < n; i++ {
		s := b[i]
		for j, l := range a[i*n : i*n+i] {
			s -= l * b[j]
		}
		b[i] = s
	}
	for i := n - 1; i >= 0; i-- {
		s := b[i]
		for j := i + 1; j < n; j++ {
			s -= a[i*n+j] * b[j]
		}
		b[i] = s / a[i*n+i]
	}
}

// solveT replaces b by the solution of Aᵀ·x = b.
func (f *lu) solveT(b []float64) {
	n, a := f.n, f.a
	b = b[:n]
	for i := range n {
		s := b[i] / a[i*n+i]
		b[i] = s
		for j := i + 1; j < n; j++ {
			b[j] -= a[i*n+j] * s
		}
	}
	for i := n - 1; i > 0; i-- {
		s := b[i]
		for j, l := range a[i*n : i*n+i] {
			b[j] -= l * s
		}
	}
	for k := n - 1; k >= 0; k-- {
		p := f.perm[k]
		b[k], b[p] = b[p], b[k]
	}
}

// factorFirm factors a and reports whether it is regular at all.
func (f *lu) factorFirm() bool {
	ratio, _ := f.factor()
	return ratio > 1e-14 || f.n == 0
}

// determinant returns the determinant of the factored matrix.
func (f *lu) determinant() float64 {
	d := 1.0
	for k, p := range f.perm {
		d *= f.a[k*f.n+k]
		if p != k {
			d = -d
		}
	}
	return d
}
