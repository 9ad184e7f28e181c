# Sources of the hazard figures, relative to src/assess.
set(hazard_sources
    hazard/banding.cpp
    hazard/dominance.cpp
    hazard/endpoint.cpp
    hazard/endpoint_list.cpp
    hazard/endpoints/acute_dose.cpp
    hazard/endpoints/aquatic.cpp
    hazard/endpoints/graded.cpp
    hazard/endpoints/inhalation.cpp
    hazard/hazard_grid.cpp
    hazard/hazard_map.cpp
    hazard/rank_agreement.cpp
    hazard/scheme_reader.cpp
    hazard/score.cpp)
