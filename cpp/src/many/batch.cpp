#include "backspring/many/batch.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>
#include <map>

#include "backspring/core/require.hpp"
#include "backspring/design/dimension.hpp"
#include "row.hpp"
#include "row_threads.hpp"

namespace backspring {
namespace {

/// A number that rows differ in, and its value in the first row.
struct Setter {
    Dimension dimension;
    const double* values;
};

/// In the order in which numbers are set.
std::vector<Setter> order(const Design& design, const std::vector<Change>& changes) {
    std::vector<Setter> setters;
    for (const Change& change : changes) {
        setters.push_back({*find_dimension(design, change.key), change.values.data()});
    }
    std::ranges::stable_sort(setters, {}, [](const Setter& each) { return each.dimension.field; });
    return setters;
}

void change_rules(Requirements& rules, const Design& design, const std::vector<Change>& changes) {
    rules.require(!changes.empty(), "changes",
                  [] { return std::string("must name at least one dimension"); });
    std::map<std::string, std::string> seen;
    for (const Change& change : changes) {
        const auto entry = find_dimension(design, change.key);
        const bool known = rules.require(entry.has_value(), change.key,
                                         [] { return std::string("is no dimension of a design"); });
        if (!known) continue;
        rules.require(!entry->numbers(design).empty(), change.key,
                      [] { return std::string("the design has none to change"); });
        const auto stated = seen.emplace(number_key(*entry, design), change.key);
        rules.require(stated.second, change.key,
                      [&] { return given_again(change.key, stated.first->second); });
        rules.require(change.values.size() == changes.front().values.size(), change.key, [&] {
            return "must have as many rows as " + changes.front().key + ", " +
                   std::to_string(changes.front().values.size()) + ", got " +
                   std::to_string(change.values.size());
        });
    }
}

bool is_listed(const RowColumn& column) {
    return column.name != kLeastPull && column.name != kOpenReading && column.name != kEdgeGap;
}

std::vector<RowColumn> pick_columns(Requirements& rules, const std::vector<std::string>& names) {
    const auto all = row_columns();
    std::vector<RowColumn> picked;
    if (names.empty()) {
        std::ranges::copy_if(all, std::back_inserter(picked), is_listed);
        return picked;
    }
    for (const std::string& name : names) {
        const auto found = std::find_if(all.begin(), all.end(),
                                        [&](const RowColumn& c) { return c.name == name; });
        const bool known = rules.require(found != all.end(), name,
                                         [] { return std::string("is no result of a check"); });
        if (known) picked.push_back(*found);
    }
    return picked;
}

}  // namespace

std::string name_of(RowStatus status) {
    constexpr std::array names{
        "ok",         "invalid",       "no_closed_rest", "no_half_stop_rest", "not_held_open",
        "lifted_off", "out_of_bounds", "not_run"};
    return names.at(static_cast<std::size_t>(status));
}

std::vector<std::string> batch_columns() {
    std::vector<std::string> names;
    for (const RowColumn& column : row_columns()) {
        if (is_listed(column)) names.emplace_back(column.name);
    }
    return names;
}

Batch check_many(const Design& design,
                 const std::vector<Change>& changes,
                 const BatchSettings& settings,
                 const std::function<bool(std::int64_t)>& keep_going) {
    Requirements rules;
    change_rules(rules, design, changes);
    const std::vector<RowColumn> picked = pick_columns(rules, settings.columns);
    rules.in_range("threads", settings.threads, 0.0, 1024.0, "");
    rules.in_range("chunk_rows", settings.chunk_rows, 1.0, 1e9, "");
    rules.throw_if_any();

    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    const Eigen::Index rows = changes.front().values.size();
    Batch batch;
    batch.status.assign(static_cast<std::size_t>(rows), RowStatus::not_run);
    for (const RowColumn& column : picked) {
        batch.columns.push_back({std::string(column.name), Eigen::ArrayXd::Constant(rows, none)});
    }
    const std::vector<Setter> setters = order(design, changes);
    const auto run = [&](std::int64_t from, std::int64_t to) {
        Design changed;
        std::vector<double> values(picked.size());
        for (std::int64_t row = from; row < to; ++row) {
            changed = design;
            for (const Setter& setter : setters) {
                setter.dimension.set(changed, setter.values[row]);
            }
            batch.status[static_cast<std::size_t>(row)] = work_row(changed, picked, values);
            for (std::size_t k = 0; k < picked.size(); ++k) {
                batch.columns[k].values[row] = values[k];
            }
        }
    };
    batch.complete = run_rows(rows, settings.chunk_rows, settings.threads, run, keep_going);
    return batch;
}

}  // namespace backspring
