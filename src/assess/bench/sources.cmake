# Sources of what an experiment looks like on the bench, relative to src/assess.
set(bench_sources
    bench/bench_rules.cpp
    bench/bottles.cpp
    bench/caution_list.cpp
    bench/experiment.cpp
    bench/glassware.cpp
    bench/reagents.cpp
    bench/stage_facts.cpp
    bench/structures.cpp)
