package report

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)
