// SPDX-License-Identifier: MIT
#include "assess/results/class_results.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace routeweigh::results {
namespace {

/// FNV-1a, 64 bit (public domain).
class Fingerprint {
  public:
    void add(std::string_view text) {
        for (const char c : text)
            mix(static_cast<unsigned char>(c));
        mix(0x1FU);
    }
    void add(const std::optional<CellNumber>& number) {
        if (number)
            add(std::string_view(reinterpret_cast<const char*>(&number->value), sizeof number->value));
        else
            mix(0x1EU);
    }
    std::uint64_t value() const { return value_; }

  private:
    void mix(unsigned char byte) { value_ = (value_ ^ byte) * 1099511628211ULL; }
    std::uint64_t value_ = 14695981039346656037ULL;
};

/// Where each bench code was seen first: a table of fixed size with open addressing, never more than half
/// full.
class BenchTable {
  public:
    struct Seen {
        std::uint64_t bench = 0, content = 0;
        std::size_t line = 0; ///< 0: free
    };
    BenchTable() : seen_(2 * ClassResults::most_benches) {}

    /// The first row of this bench; remembers it and returns nullptr where there was none.
    const Seen* find_or_add(std::uint64_t bench, std::uint64_t content, std::size_t line) {
        std::size_t place = bench % seen_.size();
        while (seen_[place].line != 0) {
            if (seen_[place].bench == bench) return &seen_[place];
            place = (place + 1) % seen_.size();
        }
        full_ = used_ >= ClassResults::most_benches;
        if (full_) return nullptr;
        seen_[place] = {bench, content, line};
        ++used_;
        return nullptr;
    }
    bool full() const { return full_; }

  private:
    std::vector<Seen> seen_;
    std::size_t used_ = 0;
    bool full_ = false;
};

class ClassReader {
  public:
    ClassReader(CsvReader& rows, const Theory& theory, Problems& problems)
        : rows_(rows), problems_(problems), reader_(rows, problems) {
        results_.theory = theory;
        const std::string& path = rows.name();
        results_.file =
            path.substr(path.find_last_of('/') + 1); // papers go to others: no folders of one's own
        results_.findings.resize(finding_kinds().size());
        checks_own_ = reader_.has(ColumnKind::own_amount) || reader_.has(ColumnKind::own_theory) ||
                      reader_.has(ColumnKind::own_yield);
    }

    ClassResults read() {
        ResultRow row;
        while (reader_.next(row))
            add(row);
        if (results_.rows == 0) {
            problems_.throw_if_error();
            throw InputError(rows_.problem("the file has headings and no row below them"));
        }
        finish();
        return std::move(results_);
    }

  private:
    void add(const ResultRow& row) {
        Judgement judgement = judge(row, results_.theory);
        const BenchTable::Seen* earlier = look_up(row, judgement);
        const std::size_t section = section_of(row.section);
        ++results_.rows;
        ++results_.verdicts[static_cast<std::size_t>(judgement.verdict)];
        if (judgement.findings != 0)
            for (std::size_t i = 0; i < results_.findings.size(); ++i)
                results_.findings[i] += judgement.has(finding_kinds()[i].finding) ? 1U : 0U;
        if (judgement.is_counted()) tally_.add(*judgement.yield, section);
        std::vector<OwnNumber> own;
        if (checks_own_) {
            own = check_own_numbers(row, judgement, results_.theory);
            for (const OwnNumber& number : own)
                ++results_
                      .own[static_cast<std::size_t>(number.kind)][static_cast<std::size_t>(number.standing)];
        }
        keep(row, judgement, earlier, std::move(own));
    }

    const BenchTable::Seen* look_up(const ResultRow& row, Judgement& judgement) {
        if (benches_.full()) return nullptr;
        Fingerprint bench;
        bench.add(row.section);
        bench.add(row.bench);
        Fingerprint content = bench;
        for (const auto& number : {row.product, row.boat_and_product, row.boat, row.dried_once,
                                   row.dried_again, row.substrate, row.melts_from, row.melts_to})
            content.add(number);
        const auto* earlier = benches_.find_or_add(bench.value(), content.value(), row.line);
        if (earlier != nullptr)
            judgement.add(earlier->content == content.value() ? Finding::row_again : Finding::bench_again);
        return earlier;
    }

    std::size_t section_of(std::string_view name) {
        std::vector<std::string>& names = results_.sections;
        if (last_section_ < names.size() && names[last_section_] == name) return last_section_;
        const auto found = std::find(names.begin(), names.end(), name);
        last_section_ = static_cast<std::size_t>(found - names.begin());
        if (found != names.end()) return last_section_;
        if (names.size() >= ClassResults::most_sections)
            throw InputError(rows_.problem(fmt::format("more than {} sections; is this the right column?",
                                                       ClassResults::most_sections)));
        names.emplace_back(name);
        tally_.add_section();
        return last_section_;
    }

    void keep(const ResultRow& row, const Judgement& judgement, const BenchTable::Seen* earlier,
              std::vector<OwnNumber> own) {
        std::vector<KeptRow>& kept = results_.kept;
        const auto plain = [](const KeptRow& old) { return old.judgement.verdict == Verdict::plausible; };
        if (kept.size() >= ClassResults::most_kept && results_.all_kept) {
            // Room for those that somebody has to look at.
            results_.all_kept = false;
            kept.erase(std::remove_if(kept.begin(), kept.end(), plain), kept.end());
        }
        if (!results_.all_kept &&
            (judgement.verdict == Verdict::plausible || kept.size() >= ClassResults::most_kept))
            return;
        KeptRow entry;
        entry.line = row.line;
        entry.bench = row.bench;
        entry.section = row.section;
        entry.judgement = judgement;
        if (row.melts_from) entry.melts_from = row.melts_from->value;
        if (row.melts_to) entry.melts_to = row.melts_to->value;
        if (earlier != nullptr) entry.earlier_line = earlier->line;
        entry.own = std::move(own);
        kept.push_back(std::move(entry));
    }

    void finish() {
        results_.levels = tally_.levels();
        results_.in_steps = tally_.counted_in_steps();
        results_.all_benches_known = !benches_.full();
        if (tally_.count() == 0) return;
        results_.all = tally_.spread(results_.levels);
        for (std::size_t section = 0; section < results_.levels.sections; ++section)
            results_.by_section.push_back(tally_.spread(results_.levels, section));
        results_.section_test = compare_sections(results_.levels);
        results_.outlier_test = find_outliers(results_.levels);
        if (!results_.outlier_test) return;
        for (KeptRow& row : results_.kept)
            row.stands_out = row.judgement.yield && row.judgement.verdict != Verdict::not_possible &&
                             results_.outlier_test->stands_out(*row.judgement.yield);
    }

    CsvReader& rows_;
    Problems& problems_;
    RowReader reader_;
    ClassResults results_;
    YieldTally tally_;
    BenchTable benches_;
    std::size_t last_section_ = 0;
    bool checks_own_ = false;
};

} // namespace

std::vector<double> ClassResults::yields(std::size_t most) const {
    std::vector<double> yields;
    if (all.count > most) {
        for (std::size_t i = 0; i < most; ++i)
            yields.push_back(quantile(levels, static_cast<double>(i) / static_cast<double>(most - 1)) / 100);
        return yields;
    }
    for (std::size_t level = 0; level < levels.yields.size(); ++level)
        yields.insert(yields.end(), levels.count(level), levels.yields[level] / 100);
    return yields;
}

ClassResults read_class_results(CsvReader& rows, const Theory& theory, Problems& problems) {
    return ClassReader(rows, theory, problems).read();
}

} // namespace routeweigh::results
