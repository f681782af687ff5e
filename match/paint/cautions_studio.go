// What to take care of in painting with oils, whatever the paint.

package paint

// Keys of cautions for every oil painting that a medium or a day's end calls for, too.
const (
	Rags     = "rags"
	Solvents = "solvents"
)

// StudioCautions returns what to take care of in every oil painting, the gravest first.
// Oil paint holds drying oil, so rags are among them.
func StudioCautions() []Caution {
	all := []Caution{
		{Key: Rags, Kind: OfMedium, Short: "oily rags: spread out to dry or under water, never in a heap",
			Text:   "Rags and paper with drying oil heat by themselves as the oil dries, and in a heap or a bin they can catch fire. Hang or lay them out singly, outdoors where you can and away from buildings, until they are dry and stiff, and then put them into a closed metal can with water until they are collected; or put them there at once.",
			Source: "Buckinghamshire Fire and Rescue (2020); NFPA tip sheet on oily rags (2017), as a village reprinted it"},
		{Key: Solvents, Kind: OfMedium, Short: "solvent: covered pot, fresh air, no flame, off the skin",
			Text:   "Turpentine, white spirit and the like leave the pot, the brushes and the wet panel into the air of the room. Their vapour makes dizzy, over long times it may harm nerves, and it burns. Use little, covered, with fresh air, away from flames and off the skin, which turpentine can make allergic. That goes for odourless ones, too.",
			Source: "IPCS Health and Safety Guide 103 (white spirit, WHO 1996) and a summary of it; Quebec's CNESST and New Jersey's hazard sheets on turpentine; McCann on oil painting in classrooms"},
		{Key: "dust", Kind: OfStudio, Short: "no dry sanding, no spraying",
			Text:   "Do not sand or scrape dry paint without protection from the dust that a qualified person has chosen, and do not spray. Dust is breathed, as wet paint is not: titanium white (possibly a cause of cancer so, by tests on animals) and the silica in some earths are among it.",
			Source: "IARC volume 93 (group 2B), by its summary of 2007, on titanium dioxide, whose EU classification was struck down in 2022 and 2025; silica in earths from memory; A. Babin on pigments, Center for Safety in the Arts"},
		{Key: "hands", Kind: OfStudio, Short: "no food, drink or smoke at the easel; wash hands",
			Text:   "Do not eat, drink or smoke at the easel, nor point a brush with the lips. Wash hands before eating; with soap or oil, not with solvent. Gloves or a barrier cream keep paint out of small cuts.",
			Source: "A. Babin on pigments, Center for Safety in the Arts: most is swallowed from hands; ILO/WHO cards 0175 and 0404; gloves and soap: common practice, no source"},
		{Key: "disposal", Kind: OfStudio, Short: "nothing down the drain",
			Text:   "Let no paint, solvent or rinsings reach a drain or the ground. Wipe brushes out before washing them; let used solvent settle in a closed jar and use its clear part again. Take sludge, solvent and leftover paint to a hazardous-waste collection.",
			Source: "US EPA on household hazardous waste; public works of Lawton, Oklahoma, on settling solvent; wiping: common practice, no source"},
		{Key: "children", Kind: OfStudio, Short: "out of reach of children and pets",
			Text:   "Keep paints, solvents, rags and wet panels out of reach of children and pets; artists' oils are not for young children. Swallowed solvent can get into the lungs and kill: if it happens, ask a poison centre or a doctor at once, with the label at hand.",
			Source: "A. Babin, Center for Safety in the Arts (not under 12); CNESST on turpentine (H304); US 16 CFR 1500.14 on turpentine and white spirit"},
		{Key: "label", Kind: OfStudio, Short: "read the label first",
			Text:   "These are reminders of the usual, not advice for you. Names on tubes do not tell all that is in them; labels that follow ASTM D4236 tell of long-term hazards. Where a doubt is left, or you are pregnant, allergic or ill, ask a qualified person.",
			Source: "US CPSC on art materials (ASTM D4236); the rest common practice, no source"},
	}
	for i := range all {
		all[i].Text += Defers
	}
	return all
}
