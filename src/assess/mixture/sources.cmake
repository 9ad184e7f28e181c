# Sources of the classification of mixtures, relative to src/assess.
set(mixture_sources
    mixture/acute_sum.cpp
    mixture/aquatic_ingredient.cpp
    mixture/contact_sum.cpp
    mixture/explain.cpp
    mixture/flash_point.cpp
    mixture/flash_point_data.cpp
    mixture/label.cpp
    mixture/label_elements.cpp
    mixture/limits_reader.cpp
    mixture/mixture.cpp
    mixture/mixture_classification.cpp
    mixture/mixture_rules.cpp
    mixture/physical_entry.cpp
    mixture/resolved_mixture.cpp
    mixture/result.cpp
    mixture/rule_list.cpp
    mixture/rules/acute_toxicity.cpp
    mixture/rules/aquatic.cpp
    mixture/rules/aspiration.cpp
    mixture/rules/eye_contact.cpp
    mixture/rules/flammable_liquid.cpp
    mixture/rules/lasting_harm.cpp
    mixture/rules/listed_environment.cpp
    mixture/rules/metal_corrosion.cpp
    mixture/rules/other_physical.cpp
    mixture/rules/oxidiser.cpp
    mixture/rules/sensitisation.cpp
    mixture/rules/skin_contact.cpp
    mixture/rules/supplemental_statements.cpp
    mixture/rules/target_organs.cpp
    mixture/rules/transient_effects.cpp
    mixture/substance_notes.cpp
    mixture/thresholds.cpp)
# Rules name their parts alike, so each is compiled by itself in a unity build.
set(mixture_rule_sources ${mixture_sources})
list(FILTER mixture_rule_sources INCLUDE REGEX "mixture/rules/")
set_source_files_properties(${mixture_rule_sources} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
