module steelyard/checks

go 1.26
