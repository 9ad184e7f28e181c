// SPDX-License-Identifier: MIT
// Declarations of the commands, one a file.
#pragma once

#include "cli/command.hpp"

namespace routeweigh::cli {

std::function<void()> add_balance(CLI::App& program, Context& context);
std::function<void()> add_bench_sheet(CLI::App& program, Context& context);
std::function<void()> add_binder(CLI::App& program, Context& context);
std::function<void()> add_break_even(CLI::App& program, Context& context);
std::function<void()> add_check(CLI::App& program, Context& context);
std::function<void()> add_classify(CLI::App& program, Context& context);
std::function<void()> add_compare(CLI::App& program, Context& context);
std::function<void()> add_costs(CLI::App& program, Context& context);
std::function<void()> add_explain(CLI::App& program, Context& context);
std::function<void()> add_find(CLI::App& program, Context& context);
std::function<void()> add_hazards(CLI::App& program, Context& context);
std::function<void()> add_improve(CLI::App& program, Context& context);
std::function<void()> add_labels(CLI::App& program, Context& context);
std::function<void()> add_manual(CLI::App& program, Context& context);
std::function<void()> add_questions(CLI::App& program, Context& context);
std::function<void()> add_results(CLI::App& program, Context& context);
std::function<void()> add_stock(CLI::App& program, Context& context);
std::function<void()> add_talk_card(CLI::App& program, Context& context);
std::function<void()> add_term(CLI::App& program, Context& context);
std::function<void()> add_uncertainty(CLI::App& program, Context& context);
std::function<void()> add_waste(CLI::App& program, Context& context);
std::function<void()> add_what_if(CLI::App& program, Context& context);
std::function<void()> add_workbook(CLI::App& program, Context& context);

} // namespace routeweigh::cli
