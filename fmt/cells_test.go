package rigfmt

import "testing"

// cellCases are points 3 and 6: the cells of part statements and their clauses.
var cellCases = []formatCase{
	{
		"kind, name, model on part, clauses",
		"pulley top bearing on head strength 36 kN efficiency 92 %\nhitch grab prusik cord 8 mm\npulley runner on grab holds\nrope long length 60 m\n",
		"pulley  top     bearing on head  efficiency 92 %  strength 36 kN\n" +
			"hitch   grab    prusik           cord 8 mm\n" +
			"pulley  runner  on grab          holds\n" +
			"rope    long                     length 60 m\n",
	},
	{
		"an empty cell takes no width",
		"anchor head strength 30 kN\ncounterweight sack mass 20 kg\n",
		"anchor         head  strength 30 kN\ncounterweight  sack  mass 20 kg\n",
	},
	{
		"a line without clauses has no blanks at its end",
		"anchor a\npulley long-name model on a\npulley b on a\n",
		"anchor  a\npulley  long-name  model on a\npulley  b          on a\n",
	},
	{
		"on may stand anywhere",
		"pulley top strength 36 kN on head holds",
		"pulley  top  on head  strength 36 kN  holds\n",
	},
	{
		"from and to are two clauses",
		"leg left strut angle -30 deg to master from tree strength 22 kN",
		"leg  left  from tree  to master  angle -30 deg  strength 22 kN  strut\n",
	},
	{
		"clauses in the order of the kind, then those of every part",
		"pulley p mass 1 kg length 30 cm at 2 m releasable set-back 10 cm sideways holds x sheaves 2 strength 36 kN efficiency 92 %",
		"pulley  p  efficiency 92 %  strength 36 kN  sheaves 2  holds x  sideways  set-back 10 cm  releasable  at 2 m  length 30 cm  mass 1 kg\n",
	},
	{
		"a kind's own order of a common clause",
		"load l raise 3 m at 0 m people 1 mass 80 kg\nrope r strength 30 kN at 1 m length 60 m diameter 11 mm",
		"load  l  mass 80 kg  people 1  raise 3 m  at 0 m\nrope  r  diameter 11 mm  length 60 m  strength 30 kN  at 1 m\n",
	},
	{
		"an edge puts friction before efficiency",
		"edge e padded efficiency 0.5 friction 0.4 angle 90 deg",
		"edge  e  angle 90 deg  friction 0.4  efficiency 0.5  padded\n",
	},
	{
		"lowering stays with its efficiency",
		"device d takes 9 to 11 mm efficiency 60% lowering 40%",
		"device  d  efficiency 60 % lowering 40 %  takes 9 to 11 mm\n",
	},
	{
		"stock has its kind in the first cell",
		"stock pulley twin sheaves 2 efficiency 0.93 to 0.96 # sheet\nstock rope static-11 diameter 11 mm\n",
		"stock pulley  twin       efficiency 0.93 to 0.96  sheaves 2  # sheet\nstock rope    static-11  diameter 11 mm\n",
	},
}

func TestPoints3And6Cells(t *testing.T) { runCases(t, cellCases) }
