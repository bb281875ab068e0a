package evaluation

// usual is what every result carries, whatever the machine.
var usual = [...]string{
	"This is a model of a measured machine, not a measurement of its safety.",
	"Start light and stop at pain. Pain or injury goes to a licensed professional.",
	"Keep to the machine maker's manual and to local rules; where they differ from this page, they count.",
	"A changed or built machine needs a competent engineer, guards, stops and a load test to the applicable standard before anyone gets in.",
}

// Cautions returns the sheet's own cautions and the usual ones.
func (e *Evaluation) Cautions() []string {
	return append(append([]string{}, e.Sheet.Cautions...), usual[:]...)
}
