// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;

/**
 * Resistors in series and parallel. Made by {@link #of}, {@link #series} and {@link #parallel}, which keep it flat: no series directly
 * inside a series, no parallel directly inside a parallel.
 */
public sealed interface Network {
    /** Returns the resistance between its two ends in ohms: members added in series, their reciprocals added in parallel. */
    double ohms();

    /** Returns its resistors from left to right, one entry for each piece. */
    List<Resistor> resistors();

    /** Returns a single resistor as a network. */
    static Network of(Resistor resistor) {
        return new Single(resistor);
    }

    /** Returns networks in series, those that are series themselves opened up; one alone is returned as it is. */
    static Network series(List<Network> members) {
        List<Network> flat = new ArrayList<>();
        for (Network member : members) {
            if (member instanceof Series inner) {
                flat.addAll(inner.members());
            } else {
                flat.add(member);
            }
        }
        return flat.size() == 1 ? flat.get(0) : new Series(flat);
    }

    /** Returns networks in parallel, those that are parallel themselves opened up; one alone is returned as it is. */
    static Network parallel(List<Network> members) {
        List<Network> flat = new ArrayList<>();
        for (Network member : members) {
            if (member instanceof Parallel inner) {
                flat.addAll(inner.members());
            } else {
                flat.add(member);
            }
        }
        return flat.size() == 1 ? flat.get(0) : new Parallel(flat);
    }

    /**
     * One resistor.
     *
     * @param resistor which
     */
    record Single(Resistor resistor) implements Network {
        public Single {
            Checks.present(resistor, "resistor");
        }

        @Override
        public double ohms() {
            return resistor.ohms();
        }

        @Override
        public List<Resistor> resistors() {
            return List.of(resistor);
        }
    }

    /**
     * One after the other; the same current flows through all.
     *
     * @param members at least two, none of them a series
     */
    record Series(List<Network> members) implements Network {
        public Series {
            members = Checks.members(members);
            if (members.stream().anyMatch(Series.class::isInstance)) {
                throw new IllegalArgumentException("members holds a series; open it up by Network.series");
            }
        }

        @Override
        public double ohms() {
            return members.stream().mapToDouble(Network::ohms).sum();
        }

        @Override
        public List<Resistor> resistors() {
            return Checks.resistors(members);
        }
    }

    /**
     * Side by side; the same voltage lies across all.
     *
     * @param members at least two, none of them a parallel connection
     */
    record Parallel(List<Network> members) implements Network {
        public Parallel {
            members = Checks.members(members);
            if (members.stream().anyMatch(Parallel.class::isInstance)) {
                throw new IllegalArgumentException(
                        "members holds a parallel connection; open it up by Network.parallel");
            }
        }

        @Override
        public double ohms() {
            return 1 / members.stream().mapToDouble(member -> 1 / member.ohms()).sum();
        }

        @Override
        public List<Resistor> resistors() {
            return Checks.resistors(members);
        }
    }
}
