# Sources of the class results, relative to src/assess.
set(result_sources
    results/class_results.cpp results/headings.cpp results/judgement.cpp results/own_numbers.cpp
    results/result_row.cpp results/theory.cpp results/yield_tally.cpp)
