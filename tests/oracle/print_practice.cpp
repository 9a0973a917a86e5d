// Prints practice runs for compare_practice.py to work out again. Lines: code|what a perfect reader puts down|dials and
// mishap|word.
// usage: print_practice [SEEDS]: so many seeds (60 without it), each with five students, all difficulties, with and
// without a mishap.

#include <cstdio>
#include <cstdlib>

#include "tests/core/practice_support.hpp"

using namespace overwater;

int main(int argc, char** argv) {
    const int seeds = argc > 1 ? std::atoi(argv[1]) : 60;
    for (int i = 0; i < seeds * 30; ++i) {
        PracticeSettings s;
        s.seed = i / 30 * 163 % practice_seeds;
        s.student = i % 5 == 0 ? 0 : i % 5 * 7 + i / 30 % 800;
        s.mishap = i / 5 % 2 == 1;
        s.difficulty = static_cast<Difficulty>(i / 10 % 3);
        s.release = static_cast<Release>(i % 3);
        s.standard = static_cast<StandardConditions>(i % 5);
        s.vapour = static_cast<PracticeVapour>(i / 7 % 3);
        const PracticeRun practice = practice_run(s);
        std::printf("%s|%s|%s|%s\n", practice.record.practice_code.c_str(), test::truth_line(practice).c_str(),
                    test::dial_line(practice).c_str(), release_word(s).c_str());
    }
    return 0;
}
