"""Published answers that were wrong, with the readings they came from and the slips that give them. Ids as in
tests/cases/cases.md, where each source is named; the readings are those of tests/cases/*.cpp."""

ONE_ATM = {"standard": "0C_1atm"}
OWN_VAPOUR = {"standard": "0C_1atm", "vapour": "own_value", "accepted": "typed"}
COLLECTED = {"conversion": "none", "accepted": "typed"}
MAGNESIUM = {"metal": ("magnesium", ""), "acid": ("hydrochloric", ""), "number_at_closed_end": ("zero", "")}

HOT = MAGNESIUM | {"liquid_stands": ("level", ""), "barometer": ("535.5", "mmHg")}
HOT_CONVENTIONS = ONE_ATM | {"molar_mass_digits": "one_decimal"}
CIRCULAR = MAGNESIUM | {
    "mass_of_metal": ("0.03", "g"), "liquid_stands": ("higher_inside", ""), "level_difference": ("70", "mm"),
    "temperature": ("23.9", "degC"), "barometer": ("102.6846", "kPa"), "own_vapour_pressure": ("3.2", "kPa"),
    "accepted_value": ("22.414", "L/mol")}
MEAN_RUN = {  # the mean of three runs, 24 g/mol
    "metal": ("magnesium", ""), "acid": ("hydrochloric", ""), "number_at_closed_end": ("largest", ""),
    "tube_capacity": ("50", "cm3"), "scale_reading": ("11.1", "cm3"), "mass_of_metal": ("0.038", "g"),
    "accepted_value": ("24.00", "dm3/mol")}
MEAN_RUN_CONVENTIONS = COLLECTED | {"molar_mass_digits": "whole"}


def hot(mass, volume, celsius):
    return HOT | {"mass_of_metal": (mass, "g"), "scale_reading": (volume, "mL"), "temperature": (celsius, "degC")}


# id, entries, conventions, published answers (line, text, unit), slips that give the last of them, and a remark.
PUBLISHED = [
    ("mg-hs-1998-46or45", MAGNESIUM | {
        "mass_from": ("ribbon", ""), "ribbon_length": ("4.00", "cm"), "mass_per_metre": (".0116", "g/cm"),
        "scale_reading": ("46", "mL"), "liquid_stands": ("level", ""), "temperature": ("25", "degC"),
        "barometer": ("775", "mmHg"), "own_vapour_pressure": ("23.8", "mmHg"), "accepted_value": ("22.400", "L/mol")},
     OWN_VAPOUR, [("amount_of_metal", ".00191", "mol"), ("percent_error", "97.35", "%")], {"error_ratio"},
     "by its amount at three figures, 0.00191 mol, and 273 and 298 K"),
    ("mg-rtp-burette-50minus", MEAN_RUN, MEAN_RUN_CONVENTIONS,
     [("gas_volume", "38.9", "cm3"), ("amount_of_metal", "0.001", "mol"), ("molar_volume_bench", "38.9", "L/mol")],
     {"amount_one_figure_cut"}, ""),
    ("mg-rtp-burette-50minus", MEAN_RUN, MEAN_RUN_CONVENTIONS, [("molar_volume_bench", "38.9", "L/mol")],
     {"amount_one_figure_cut"}, ""),
    ("mg-rtp-burette-50minus", MEAN_RUN, MEAN_RUN_CONVENTIONS,
     [("molar_volume_bench", "38.90", "L/mol"), ("percent_error", "-62.08", "%")],
     {"amount_one_figure_cut", "error_sign_lost"}, ""),
    ("mg-hs-2006-inHg-as-kPa", MAGNESIUM | {
        "mass_from": ("ribbon", ""), "ribbon_length": ("3.0", "cm"), "mass_per_metre": ("1.5", "g/m"),
        "scale_reading": ("49.25", "mL"), "liquid_stands": ("level", ""), "temperature": ("21", "degC"),
        "barometer": ("30.04", "inHg")},
     ONE_ATM, [("mass", "0.000045", "g")], {"mass_thousandth"}, ""),
    ("mg-hs-2006-inHg-as-kPa", MAGNESIUM | {
        "mass_of_metal": ("0.0267355", "g"), "scale_reading": ("49.25", "mL"), "liquid_stands": ("level", ""),
        "temperature": ("21", "degC"), "barometer": ("30.04", "inHg")},
     ONE_ATM, [("molar_volume_standard", "44.77", "L/mol")], {"no_conversion"},
     "its amount of 0.0011 mol, which no slip explains, is typed as a mass"),
    *[("mg-ib-R-circular-0.02pct", CIRCULAR | {"scale_reading": (volume, "L")}, OWN_VAPOUR,
       [("gas_constant", "8.31", "J/mol/K")], {"circular_by_gas_law"},
       "three figures of its 8.312381, 8.313808, 8.312476")
      for volume in ("0.0254", "0.0506", "0.0514")],
    ("mg-ib-R-circular-0.02pct", CIRCULAR | {"scale_reading": ("0.0254", "L")}, ONE_ATM,
     [("water_vapour_pressure", "3.2", "kPa")], {"vapour_of_25_celsius"}, "by formula 2.97 kPa"),
    *[("mg-es-2600m-hot-gas", hot(mass, volume, celsius), HOT_CONVENTIONS,
       [("dry_gas_pressure", "535.5", "mmHg"), ("gas_constant", text, "J/mol/K")], {"vapour_ignored"},
       f"R {litre_atmosphere} L atm/(mol K), times 101.325")
      for mass, volume, celsius, text, litre_atmosphere in (
          ("0.018", "21.5", "50", "6.413", "0.06329"), ("0.023", "31", "45", "7.350", "0.07254"),
          ("0.028", "38", "40", "7.52", "0.07420"))],
    ("mg-pt-g-in-wrong-units", MAGNESIUM | {
        "mass_of_metal": ("0.055", "g"), "scale_reading": ("71.2", "mL"), "liquid_stands": ("higher_inside", ""),
        "level_difference": ("10.3", "cm"), "temperature": ("28", "degC"), "barometer": ("720", "mmHg"),
        "own_vapour_pressure": ("29.70", "mmHg"), "accepted_value": ("22.414", "L/mol")},
     OWN_VAPOUR, [("dry_gas_pressure", "690.22", "mmHg")], {"column_hundredth"}, "301.15 K typed as 28 °C"),
    ("al-vp-kPa-as-mmHg", {
        "metal": ("aluminium", ""), "acid": ("hydrochloric", ""), "mass_of_metal": ("0.30", "g"),
        "number_at_closed_end": ("zero", ""), "scale_reading": ("0.419", "L"), "liquid_stands": ("level", ""),
        "temperature": ("24.9", "degC"), "barometer": ("749.6", "mmHg"), "own_vapour_pressure": ("3.169", "kPa"),
        "accepted_value": ("22.414", "L/mol")},
     OWN_VAPOUR, [("water_vapour_pressure", "3.169", "mmHg"), ("dry_gas_pressure", "0.9821", "atm")],
     {"vapour_kilopascal_as_millimetre"}, "four figures of its 0.98213 atm; table value typed in kPa"),
]
