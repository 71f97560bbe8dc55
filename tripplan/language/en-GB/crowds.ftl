crowds-table-bicycles = leisure riders of a city's hired bicycles, 2011 and 2012
crowds-ordinary-day = an ordinary school-term weekday
