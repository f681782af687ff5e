package match

import "tonewright/analyze/colour"

func Differs(measured, aim colour.Lab) string { return missOf(aim, measured, aim.Munsell()).shifts() }
