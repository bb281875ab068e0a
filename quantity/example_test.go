package quantity_test

import (
	"fmt"

	"steelyard/quantity"
)

func ExampleParse() {
	arm, err := quantity.Parse("812±3 mm", quantity.Length, quantity.NoUnit)
	fmt.Println(arm.Value, "m, standard uncertainty", arm.Standard(), "m", err)
	fmt.Println(arm, "or", arm.Format(quantity.Imperial))

	_, err = quantity.Parse("812 kg", quantity.Length, quantity.NoUnit)
	fmt.Println(err)
	// Output:
	// 0.812 m, standard uncertainty 0.0015 m <nil>
	// 812±3 mm or 31.97±0.12 in
	// "812 kg" is a mass, but a length is wanted here: write mm, cm, m, in or ft
}
