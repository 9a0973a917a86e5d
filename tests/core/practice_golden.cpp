#include <doctest/doctest.h>

#include <string>

#include "tests/core/practice_support.hpp"

using namespace overwater;

// Twenty codes and what a perfect reader of each puts down, the same bytes natively and as WebAssembly. The expected
// text is that of an independent implementation in another language and another arithmetic:
// tests/oracle/compare_practice.py --golden prints these rows. They never change: a generator that gives other
// readings is a new version.

namespace {

struct Golden {
    const char* code;
    const char* text;
};

constexpr Golden golden[] = {
    {"00000-00W6",
     "acid_volume 15.0 mL,acid_concentration 2.0 mol/L,tube_capacity 100 mL,temperature 20.7 degC,"
     "barometer 981.6 hPa,metal magnesium,acid hydrochloric,mass_from weighed,number_at_closed_end zero,"
     "pressure_kind at_the_bench;mass_of_metal 0.0752 g,scale_reading 78.76 mL,liquid_stands level"},
    {"3RN69-011X",
     "acid_volume 10.0 mL,acid_concentration 2.0 mol/L,tube_capacity 50 mL,temperature 18.0 degC,"
     "barometer 1028.2 hPa,metal magnesium,acid hydrochloric,mass_from weighed,number_at_closed_end zero,"
     "pressure_kind at_the_bench;mass_of_metal 0.0425 g,scale_reading 39.45 mL,liquid_stands level"},
    {"1R4F8-0JH7",
     "acid_volume 10.0 mL,acid_concentration 2.0 mol/L,tube_capacity 50 mL,temperature 24.2 degC,"
     "barometer 98.57 kPa,metal magnesium,acid hydrochloric,mass_from weighed,number_at_closed_end zero,"
     "pressure_kind at_the_bench;mass_of_metal 0.0315 g,scale_reading 33.32 mL,liquid_stands level"},
    {"0EM6T-YYMC",
     "acid_volume 10.0 mL,acid_concentration 3.0 mol/L,tube_capacity 50 mL,temperature 24.7 degC,"
     "barometer 989.2 hPa,metal magnesium,acid hydrochloric,mass_from weighed,number_at_closed_end zero,"
     "pressure_kind at_the_bench;mass_of_metal 0.0400 g,scale_reading 44.34 mL,liquid_stands level"},
    {"112PH-004H",
     "acid_volume 10.0 mL,acid_concentration 2.0 mol/L,tube_capacity 50 mL,end_space 3.00 mL,"
     "temperature 24.4 degC,barometer 759.7 mmHg,metal magnesium,acid hydrochloric,mass_from weighed,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_of_metal 0.0341 g,scale_reading 16.91 mL,"
     "level_difference 121.9 mm,liquid_stands higher_inside"},
    {"0005P-0123",
     "acid_volume 10.0 mL,acid_concentration 3.0 mol/L,tube_capacity 50 mL,temperature 24.8 degC,"
     "barometer 764.5 mmHg,metal magnesium,acid hydrochloric,mass_from weighed,number_at_closed_end zero,"
     "pressure_kind at_the_bench;mass_of_metal 0.0312 g,scale_reading 33.74 mL,level_difference 64.5 mm,"
     "liquid_stands higher_inside"},
    {"3RN7C-0JFT",
     "acid_volume 10.0 mL,acid_concentration 2.0 mol/L,tube_capacity 50 mL,end_space 2.25 mL,"
     "temperature 17.7 degC,barometer 976.9 hPa,metal magnesium,acid hydrochloric,mass_from weighed,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_of_metal 0.0363 g,scale_reading 14.04 mL,"
     "level_difference 104.2 mm,liquid_stands higher_inside"},
    {"1R4KE-YYGK",
     "acid_volume 15.0 mL,acid_concentration 2.0 mol/L,tube_capacity 100 mL,temperature 18.0 degC,"
     "barometer 1024.7 hPa,metal magnesium,acid hydrochloric,mass_from weighed,number_at_closed_end zero,"
     "pressure_kind at_the_bench;mass_of_metal 0.0734 g,scale_reading 68.64 mL,level_difference 94.8 mm,"
     "liquid_stands higher_inside;mass_of_metal 0.0828 g,scale_reading 82.50 mL,level_difference 74.7 mm,"
     "liquid_stands higher_inside"},
    {"0EMDH-00HF",
     "purity 98.5 %,acid_volume 10.0 mL,acid_concentration 1.5 mol/L,tube_capacity 50 mL,end_space 2.85 mL,"
     "temperature 66.4 degF,barometer 770.0 mmHg,metal zinc,acid sulfuric,mass_from weighed,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_of_metal 0.088 g,start_reading 47.53 mL,"
     "start_level_difference 21.64 cm,scale_reading 15.01 mL,level_difference 11.97 cm,"
     "liquid_stands higher_inside"},
    {"112VP-01NM",
     "acid_volume 15.0 mL,acid_concentration 2.0 mol/L,tube_capacity 100 mL,end_space 1.75 mL,"
     "temperature 19.5 degC,barometer 29.06 inHg,height_above_sea_level 980 m,metal aluminium,"
     "acid hydrochloric,mass_from weighed,number_at_closed_end largest,pressure_kind altimeter_setting"
     ";mass_of_metal 0.0439 g,scale_reading 31.06 mL,level_difference 9.06 cm,liquid_stands higher_inside"
     ";mass_of_metal 0.0402 g,scale_reading 37.30 mL,level_difference 7.93 cm,liquid_stands higher_inside"
     ";mass_of_metal 0.0490 g,scale_reading 27.56 mL,level_difference 9.11 cm,liquid_stands higher_inside"},
    {"0006R-0JG0",
     "purity 98.7 %,acid_volume 10.0 mL,acid_concentration 3.0 mol/L,tube_capacity 50 mL,end_space 1.90 mL,"
     "temperature 68.4 degF,barometer 30.280 inHg,metal magnesium,acid hydrochloric,mass_from by_difference,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_before 13.1040 g,mass_after 13.0732 g,"
     "start_reading 48.59 mL,start_level_difference 16.66 cm,scale_reading 17.88 mL,level_difference 16.00 cm,"
     "liquid_stands higher_inside;mass_before 28.2975 g,mass_after 28.2620 g,start_reading 48.03 mL,"
     "start_level_difference 15.41 cm,scale_reading 12.86 mL,level_difference 4.61 cm,"
     "liquid_stands higher_inside"},
    {"3RNE3-YYW4",
     "acid_volume 10.0 mL,acid_concentration 2.0 mol/L,tube_capacity 50 mL,end_space 2.25 mL,"
     "temperature 24.7 degC,barometer 29.06 inHg,height_above_sea_level 1390 m,metal aluminium,"
     "acid hydrochloric,mass_from by_difference,number_at_closed_end largest,pressure_kind altimeter_setting"
     ";mass_before 26.3454 g,mass_after 26.3213 g,start_reading 48.83 mL,start_level_difference 25.96 cm,"
     "scale_reading 7.59 mL,level_difference 4.45 cm,liquid_stands higher_inside;mass_before 16.0614 g,"
     "mass_after 16.0410 g,start_reading 48.96 mL,start_level_difference 19.16 cm,scale_reading 11.70 mL,"
     "level_difference 6.56 cm,liquid_stands higher_inside"},
    {"1R4HD-00TA",
     "acid_volume 10.0 mL,acid_concentration 2.0 mol/L,tube_capacity 50 mL,temperature 20.6 degC,"
     "barometer 981.9 hPa,metal magnesium,acid hydrochloric,mass_from weighed,number_at_closed_end zero,"
     "pressure_kind at_the_bench;mass_of_metal 0.0342 g,scale_reading 36.04 mL,level_difference 95.5 mm,"
     "liquid_stands higher_inside;mass_of_metal 0.0310 g,scale_reading 32.57 mL,level_difference 79.1 mm,"
     "liquid_stands higher_inside"},
    {"0EMAG-01Y4",
     "acid_volume 10.0 mL,acid_concentration 2.0 mol/L,tube_capacity 50 mL,end_space 2.35 mL,"
     "temperature 18.1 degC,barometer 761.6 mmHg,metal magnesium,acid hydrochloric,mass_from weighed,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_of_metal 0.0386 g,scale_reading 15.07 mL,"
     "liquid_stands level"},
    {"112Q4-0JE1",
     "acid_volume 10.0 mL,acid_concentration 3.0 mol/L,tube_capacity 50 mL,end_space 2.45 mL,"
     "temperature 21.2 degC,barometer 99.99 kPa,metal magnesium,acid hydrochloric,mass_from weighed,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_of_metal 0.0336 g,scale_reading 17.46 mL,"
     "level_difference 43.0 mm,liquid_stands higher_inside"},
    {"0004M-YYQK",
     "acid_volume 10.0 mL,acid_concentration 3.0 mol/L,tube_capacity 50 mL,end_space 1.55 mL,"
     "temperature 22.3 degC,barometer 100.27 kPa,metal magnesium,acid hydrochloric,mass_from weighed,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_of_metal 0.0331 g,scale_reading 18.89 mL,"
     "level_difference 34.9 mm,liquid_stands higher_outside"},
    {"3RNAY-00RD",
     "purity 98.1 %,acid_volume 15.0 mL,acid_concentration 2.0 mol/L,tube_capacity 100 mL,end_space 1.60 mL,"
     "temperature 17.9 degC,barometer 1003.7 hPa,height_above_sea_level 340 m,metal aluminium,"
     "acid hydrochloric,mass_from by_difference,number_at_closed_end largest,pressure_kind altimeter_setting"
     ";mass_before 16.8036 g,mass_after 16.7500 g,start_reading 95.42 mL,start_level_difference 220.4 mm,"
     "scale_reading 20.32 mL,level_difference 74.1 mm,liquid_stands higher_inside;mass_before 34.6650 g,"
     "mass_after 34.6165 g,start_reading 98.12 mL,start_level_difference 162.2 mm,scale_reading 30.04 mL,"
     "level_difference 65.2 mm,liquid_stands higher_inside"},
    {"1R4Q1-0172",
     "acid_volume 15.0 mL,acid_concentration 2.0 mol/L,tube_capacity 100 mL,end_space 2.75 mL,"
     "tube_bore 14.7 mm,temperature 73.4 degF,barometer 1030.3 hPa,height_above_sea_level 80 m,metal zinc,"
     "acid hydrochloric,mass_from weighed,number_at_closed_end largest,pressure_kind altimeter_setting"
     ";mass_of_metal 0.180 g,scale_reading 37.02 mL,level_difference 5.62 cm,liquid_stands higher_outside"
     ";mass_of_metal 0.235 g,scale_reading 17.60 mL,level_difference 5.20 cm,liquid_stands higher_outside"
     ";mass_of_metal 0.178 g,scale_reading 37.84 mL,level_difference 4.08 cm,liquid_stands higher_outside"},
    {"0EMCF-0JTP",
     "acid_volume 10.0 mL,acid_concentration 3.0 mol/L,tube_capacity 50 mL,end_space 2.80 mL,"
     "temperature 18.4 degC,barometer 975.1 hPa,height_above_sea_level 1290 m,metal magnesium,"
     "acid hydrochloric,mass_from by_difference,number_at_closed_end largest,pressure_kind altimeter_setting"
     ";mass_before 35.4741 g,mass_after 35.4452 g,scale_reading 16.61 mL,level_difference 14.28 cm,"
     "liquid_stands higher_inside;mass_before 20.3290 g,mass_after 20.2970 g,scale_reading 13.11 mL,"
     "level_difference 5.88 cm,liquid_stands higher_inside;mass_before 20.4836 g,mass_after 20.4474 g,"
     "scale_reading 7.85 mL,level_difference 6.90 cm,liquid_stands higher_inside"},
    {"112W6-YYT3",
     "acid_volume 10.0 mL,acid_concentration 1.0 mol/L,tube_capacity 50 mL,end_space 2.60 mL,"
     "temperature 17.5 degC,barometer 29.450 inHg,metal magnesium,acid sulfuric,mass_from weighed,"
     "number_at_closed_end largest,pressure_kind at_the_bench;mass_of_metal 0.0322 g,start_reading 48.22 mL,"
     "start_level_difference 171.3 mm,scale_reading 16.87 mL,level_difference 124.0 mm,"
     "liquid_stands higher_inside"},
};

}  // namespace

TEST_CASE("the same practice code gives the same readings, byte by byte") {
    int count = 0;
    for (const Golden& row : golden) {
        const DecodedPractice decoded = decode_practice(row.code);
        REQUIRE(decoded.settings.has_value());
        const PracticeRun practice = practice_run(*decoded.settings);
        CHECK(practice.record.practice_code == row.code);
        CHECK(test::truth_line(practice) == row.text);
        ++count;
    }
    CHECK(count == 20);
}
