// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"

#include <array>

namespace routeweigh::cli {
namespace {
// In the order of the help. One a line.
constexpr std::array all_commands{
    Command{add_compare, "compare"},         //
    Command{add_check, "check"},             //
    Command{add_explain, "explain"},         //
    Command{add_uncertainty, "uncertainty"}, //
    Command{add_break_even, "break-even"},   //
    Command{add_what_if, "what-if"},         //
    Command{add_improve, "improve"},         //
    Command{add_hazards, "hazards"},         //
    Command{add_classify, "classify"},       //
    Command{add_waste, "waste"},             //
    Command{add_bench_sheet, "bench-sheet"}, //
    Command{add_questions, "questions"},     //
    Command{add_talk_card, "talk-card"},     //
    Command{add_stock, "stock"},             //
    Command{add_labels, "labels"},           //
    Command{add_results, "results"},         //
    Command{add_costs, "costs"},             //
    Command{add_term, "term"},               //
    Command{add_binder, "binder"},           //
    Command{add_workbook, "workbook"},       //
    Command{add_balance, "balance"},         //
    Command{add_find, "find"},               //
    Command{add_manual, "manual"},           //
};
} // namespace

std::span<const Command> command_list() {
    return all_commands;
}

} // namespace routeweigh::cli
