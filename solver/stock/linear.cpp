#include "linear.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakewright {
namespace {

constexpr double no_end = std::numeric_limits<double>::infinity();
constexpr double tiny = 1e-9;
constexpr int pivots_until_refreshed = 60, most_pivots = 4000;

std::size_t row_of(int variable) { return static_cast<std::size_t>(-1 - variable); }
std::size_t column_of(int variable) { return static_cast<std::size_t>(variable); }

}  // namespace

LinearProgram::LinearProgram(std::vector<double> least) {
    const std::size_t m = least.size();
    state_.least = std::move(least);
    state_.most.assign(m, no_end);
    state_.at_most.assign(m, 0);
    entries_.resize(m);
    for (std::size_t r = 0; r < m; ++r) state_.basis.push_back(-1 - static_cast<int>(r));
    refresh();
}

void LinearProgram::add_column(double cost, const std::vector<int>& entries) {
    cost_.push_back(cost);
    state_.banned.push_back(0);
    column_in_basis_.push_back(0);
    double reduced = cost;
    for (std::size_t r = 0; r < rows(); ++r) {
        entries_[r].push_back(entries[r]);
        reduced -= worth_[r] * entries[r];
    }
    reduced_.push_back(reduced);
}

void LinearProgram::add_row(std::vector<double> entries, double least, double most) {
    state_.least.push_back(least);
    state_.most.push_back(most);
    state_.at_most.push_back(0);
    entries_.push_back(std::move(entries));
    state_.basis.push_back(-static_cast<int>(entries_.size()));
    refresh();
}

void LinearProgram::bound_row(std::size_t row, double least, double most) {
    state_.least[row] = least;
    state_.most[row] = most;
}

void LinearProgram::ban(std::size_t column) { state_.banned[column] = 1; }

void LinearProgram::restore(const LinearState& state) {
    state_ = state;
    sound_ = true;
    entries_.resize(rows());
    state_.banned.resize(columns(), 0);
    mark_basis();
    find_levels();
    find_worth();
}

void LinearProgram::mark_basis() {
    column_in_basis_.assign(columns(), 0);
    sum_in_basis_.assign(rows(), 0);
    for (const int variable : state_.basis)
        (variable < 0 ? sum_in_basis_[row_of(variable)] : column_in_basis_[column_of(variable)]) = 1;
}

double LinearProgram::least_of(int variable) const { return variable < 0 ? state_.least[row_of(variable)] : 0; }

double LinearProgram::most_of(int variable) const {
    if (variable < 0) return state_.most[row_of(variable)];
    return state_.banned[column_of(variable)] ? 0 : no_end;
}

void LinearProgram::refresh() {
    mark_basis();
    sound_ = invert();
    find_levels();
    find_worth();
    pivots_ = 0;
}

/// Gauss and Jordan, the largest pivot of each column. False where the basis has no inverse.
bool LinearProgram::invert() {
    const std::size_t m = rows();
    std::vector<double> matrix(m * m, 0);  // a row of the program each
    for (std::size_t b = 0; b < m; ++b)
        for (std::size_t r = 0; r < m; ++r) {
            const int variable = state_.basis[b];
            matrix[r * m + b] = variable < 0 ? (row_of(variable) == r ? -1 : 0) : entries_[r][column_of(variable)];
        }
    state_.inverse.assign(m * m, 0);
    for (std::size_t r = 0; r < m; ++r) state_.inverse[r * m + r] = 1;
    double* const inverse = state_.inverse.data();
    for (std::size_t b = 0; b < m; ++b) {
        std::size_t chosen = b;
        for (std::size_t r = b + 1; r < m; ++r)
            if (std::fabs(matrix[r * m + b]) > std::fabs(matrix[chosen * m + b])) chosen = r;
        if (chosen != b)
            for (std::size_t k = 0; k < m; ++k) {
                std::swap(matrix[b * m + k], matrix[chosen * m + k]);
                std::swap(inverse[b * m + k], inverse[chosen * m + k]);
            }
        const double pivot = matrix[b * m + b];
        if (std::fabs(pivot) < 1e-12) return false;
        for (std::size_t k = 0; k < m; ++k) {
            matrix[b * m + k] /= pivot;
            inverse[b * m + k] /= pivot;
        }
        for (std::size_t r = 0; r < m; ++r) {
            const double times = matrix[r * m + b];
            if (r == b || times == 0) continue;
            for (std::size_t k = 0; k < m; ++k) {
                matrix[r * m + k] -= times * matrix[b * m + k];
                inverse[r * m + k] -= times * inverse[b * m + k];
            }
        }
    }
    work_ += static_cast<std::int64_t>(m * m * m);
    return true;
}

void LinearProgram::find_levels() {
    const std::size_t m = rows();
    level_.assign(m, 0);
    for (std::size_t r = 0; r < m; ++r) {
        if (sum_in_basis_[r]) continue;
        const double sum = state_.at_most[r] ? state_.most[r] : state_.least[r];
        if (sum == 0) continue;
        for (std::size_t b = 0; b < m; ++b) level_[b] += state_.inverse[b * m + r] * sum;
    }
}

void LinearProgram::find_worth() {
    const std::size_t m = rows();
    worth_.assign(m, 0);
    for (std::size_t b = 0; b < m; ++b) {
        const int variable = state_.basis[b];
        if (variable < 0 || cost_[column_of(variable)] == 0) continue;
        for (std::size_t r = 0; r < m; ++r) worth_[r] += cost_[column_of(variable)] * state_.inverse[b * m + r];
    }
    reduced_ = cost_;
    for (std::size_t r = 0; r < m; ++r) {
        if (worth_[r] == 0) continue;
        const double worth = worth_[r];
        const double* const entry = entries_[r].data();
        for (std::size_t c = 0; c < columns(); ++c) reduced_[c] -= worth * entry[c];
    }
    work_ += static_cast<std::int64_t>(m * (m + columns()));
}

double LinearProgram::cost() const {
    double sum = 0;
    for (std::size_t b = 0; b < rows(); ++b)
        if (state_.basis[b] >= 0) sum += cost_[column_of(state_.basis[b])] * level_[b];
    return sum;
}

std::vector<double> LinearProgram::levels() const {
    std::vector<double> levels(columns(), 0);
    for (std::size_t b = 0; b < rows(); ++b)
        if (state_.basis[b] >= 0) levels[column_of(state_.basis[b])] = std::max(0.0, level_[b]);
    return levels;
}

LinearProgram::RowOfBasis LinearProgram::row_of_basis(std::size_t place) {
    const std::size_t m = rows();
    RowOfBasis row{std::vector<double>(columns(), 0), std::vector<double>(m, 0)};
    for (std::size_t r = 0; r < m; ++r) {
        const double times = state_.inverse[place * m + r];
        row.sums[r] = -times;
        if (times == 0) continue;
        const double* const entry = entries_[r].data();
        for (std::size_t c = 0; c < row.columns.size(); ++c) row.columns[c] += times * entry[c];
        work_ += static_cast<std::int64_t>(columns());
    }
    return row;
}

/// What one more of a variable takes away from each in the basis.
std::vector<double> LinearProgram::change_by(int variable) const {
    const std::size_t m = rows();
    std::vector<double> change(m, 0);
    for (std::size_t b = 0; b < m; ++b) {
        const double* const inverse = state_.inverse.data() + b * m;
        if (variable < 0) {
            change[b] = -inverse[row_of(variable)];
            continue;
        }
        double sum = 0;
        for (std::size_t r = 0; r < m; ++r)
            if (const double entry = entries_[r][column_of(variable)]; entry != 0) sum += inverse[r] * entry;
        change[b] = sum;
    }
    return change;
}

void LinearProgram::pivot(std::size_t place, int enters, bool leaves_at_most, const std::vector<double>& change,
                          const RowOfBasis& row) {
    const std::size_t m = rows();
    const int leaves = state_.basis[place];
    if (leaves < 0) {
        sum_in_basis_[row_of(leaves)] = 0;
        state_.at_most[row_of(leaves)] = leaves_at_most;
    } else {
        column_in_basis_[column_of(leaves)] = 0;
    }
    (enters < 0 ? sum_in_basis_[row_of(enters)] : column_in_basis_[column_of(enters)]) = 1;
    state_.basis[place] = enters;
    if (++pivots_ >= pivots_until_refreshed) {
        refresh();
        return;
    }
    double* const inverse = state_.inverse.data();
    for (std::size_t r = 0; r < m; ++r) inverse[place * m + r] /= change[place];
    for (std::size_t b = 0; b < m; ++b) {
        const double times = change[b];
        if (b == place || times == 0) continue;
        for (std::size_t r = 0; r < m; ++r) inverse[b * m + r] -= times * inverse[place * m + r];
    }
    find_levels();
    const double step = enters < 0 ? worth_[row_of(enters)] / row.sums[row_of(enters)]
                                   : reduced_[column_of(enters)] / row.columns[column_of(enters)];
    for (std::size_t c = 0; c < columns(); ++c) reduced_[c] -= step * row.columns[c];
    for (std::size_t r = 0; r < m; ++r) worth_[r] -= step * row.sums[r];
    work_ += static_cast<std::int64_t>(2 * m * m + columns());
}

LinearProgram::Outcome LinearProgram::dual(double dearest) {
    for (int step = 0; step < most_pivots && sound_; ++step) {
        if (cost() > dearest) return Outcome::too_dear;
        std::size_t place = rows();
        double furthest = tiny;
        bool at_most = false;
        for (std::size_t b = 0; b < rows(); ++b) {
            const double under = least_of(state_.basis[b]) - level_[b], over = level_[b] - most_of(state_.basis[b]);
            if (std::max(under, over) <= furthest) continue;
            furthest = std::max(under, over);
            place = b;
            at_most = over > under;
        }
        if (place == rows()) return Outcome::solved;
        // What enters has to push the other way, and of all that do, the one whose worth bears it least.
        const RowOfBasis row = row_of_basis(place);
        const double sign = at_most ? -1 : 1;
        int enters = 0;
        double ratio = no_end, size = 0;
        const auto consider = [&](int variable, double pushes, double reduced) {
            if (pushes > -tiny) return;
            const double here = std::max(reduced, 0.0) / -pushes;
            if (here > ratio + 1e-12 || (here > ratio - 1e-12 && -pushes <= size)) return;
            ratio = here;
            size = -pushes;
            enters = variable;
        };
        for (std::size_t c = 0; c < columns(); ++c)
            if (!column_in_basis_[c] && !state_.banned[c])
                consider(static_cast<int>(c), sign * row.columns[c], reduced_[c]);
        for (std::size_t r = 0; r < rows(); ++r) {
            if (sum_in_basis_[r] || state_.least[r] == state_.most[r]) continue;
            const double way = state_.at_most[r] ? -1 : 1;
            consider(-1 - static_cast<int>(r), sign * way * row.sums[r], way * worth_[r]);
        }
        if (ratio == no_end) return Outcome::impossible;
        pivot(place, enters, at_most, change_by(enters), row);
    }
    return Outcome::gave_up;
}

LinearProgram::Outcome LinearProgram::primal() {
    for (int step = 0; step < most_pivots && sound_; ++step) {
        int enters = 0;
        double gain = tiny, way = 1;
        for (std::size_t c = 0; c < columns(); ++c)
            if (!column_in_basis_[c] && !state_.banned[c] && -reduced_[c] > gain) {
                gain = -reduced_[c];
                enters = static_cast<int>(c);
            }
        for (std::size_t r = 0; r < rows(); ++r) {
            if (sum_in_basis_[r] || state_.least[r] == state_.most[r]) continue;
            const double here = state_.at_most[r] ? -1 : 1;
            if (-here * worth_[r] <= gain) continue;
            gain = -here * worth_[r];
            enters = -1 - static_cast<int>(r);
            way = here;
        }
        if (gain == tiny) return Outcome::solved;
        if (enters >= 0) way = 1;
        const std::vector<double> change = change_by(enters);
        std::size_t place = rows();
        double furthest = enters < 0 ? state_.most[row_of(enters)] - state_.least[row_of(enters)] : no_end;
        bool at_most = false;
        for (std::size_t b = 0; b < rows(); ++b) {
            const double falls = way * change[b];
            if (std::fabs(falls) <= tiny) continue;
            const double room =
                falls > 0 ? level_[b] - least_of(state_.basis[b]) : most_of(state_.basis[b]) - level_[b];
            const double here = std::max(room, 0.0) / std::fabs(falls);
            if (here > furthest + 1e-12) continue;
            if (here > furthest - 1e-12 && place < rows() && std::fabs(change[b]) <= std::fabs(change[place])) continue;
            furthest = std::min(here, furthest);
            place = b;
            at_most = falls < 0;
        }
        if (furthest == no_end) return Outcome::gave_up;
        if (place == rows()) {
            state_.at_most[row_of(enters)] ^= 1;
            find_levels();
            continue;
        }
        pivot(place, enters, at_most, change, row_of_basis(place));
    }
    return Outcome::gave_up;
}

LinearProgram::Outcome LinearProgram::solve(double dearest) {
    find_levels();
    const Outcome outcome = dual(dearest);
    return outcome == Outcome::solved ? primal() : outcome;
}

}  // namespace rakewright
