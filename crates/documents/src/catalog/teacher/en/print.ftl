# What can be printed: each part in a few words, as it stands in the help of the command too.

print-prep = Prep sheet: shopping, solutions, water, trays
print-forecast = Forecast, for the teacher only
print-results = Results report, from the class's readings
