"""The unit aliases that equations are annotated with: SI, one alias a unit.

The spelling in each alias is the unit's name everywhere else in the program and in the JSON.
"K" is an absolute temperature, "delta_degC" a difference of two; "1" is a pure number or a share.
Masses are in kilograms, as a scale shows them: ratings of trailers are masses too.
"""

from typing import Annotated

Number = Annotated[float, "1"]
Metres = Annotated[float, "m"]
SquareMetres = Annotated[float, "m**2"]
CubicMetres = Annotated[float, "m**3"]
QuarticMetres = Annotated[float, "m**4"]
Radians = Annotated[float, "rad"]
Seconds = Annotated[float, "s"]
Hertz = Annotated[float, "Hz"]
PerSecond = Annotated[float, "1/s"]
MetresPerSecond = Annotated[float, "m/s"]
MetresPerSecondSquared = Annotated[float, "m/s**2"]
Kilograms = Annotated[float, "kg"]
SquareKilograms = Annotated[float, "kg**2"]
KilogramMetres = Annotated[float, "kg*m"]
KilogramSquareMetres = Annotated[float, "kg*m**2"]
KilogramsPerMetre = Annotated[float, "kg/m"]
KilogramsPerSquareMetre = Annotated[float, "kg/m**2"]
KilogramsPerCubicMetre = Annotated[float, "kg/m**3"]
KilogramsPerSecond = Annotated[float, "kg/s"]
CubicMetresPerSecond = Annotated[float, "m**3/s"]
Newtons = Annotated[float, "N"]
NewtonMetres = Annotated[float, "N*m"]
NewtonsPerMetre = Annotated[float, "N/m"]
NewtonsPerRadian = Annotated[float, "N/rad"]
Pascals = Annotated[float, "Pa"]
Watts = Annotated[float, "W"]
Joules = Annotated[float, "J"]
Kelvins = Annotated[float, "K"]
TemperatureDifference = Annotated[float, "delta_degC"]
Amperes = Annotated[float, "A"]
Volts = Annotated[float, "V"]
Ohms = Annotated[float, "ohm"]
Coulombs = Annotated[float, "C"]
WattsPerSquareMetreKelvin = Annotated[float, "W/m**2/K"]
WattsPerMetreKelvin = Annotated[float, "W/m/K"]
SquareMetreKelvinsPerWatt = Annotated[float, "m**2*K/W"]
JoulesPerKilogram = Annotated[float, "J/kg"]
JoulesPerKilogramKelvin = Annotated[float, "J/kg/K"]
