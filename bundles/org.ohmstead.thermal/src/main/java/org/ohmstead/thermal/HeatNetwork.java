// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Bodies, the resistances between them and to the air, and what heats them: several devices on one sink, say. It is turned once into the
 * free modes of a {@link HeatModel}, which follow powers exactly. Places without a heat capacity are worked out at once from the others.
 *
 * <p>What changes a resistance, such as a fan, makes another network; {@link #carryFrom} takes the temperatures over.
 */
public final class HeatNetwork {
    private final List<String> bodies;
    private final NetworkModes modes;
    private final HeatModel model;
    private final double[] joulesPerKelvin;
    private final double[] wattsPerKelvinToAir;

    private HeatNetwork(Builder from) {
        bodies = from.nodes.entrySet().stream()
                .filter(node -> node.getValue() > 0)
                .map(Map.Entry::getKey)
                .toList();
        List<String> junctions = from.nodes.keySet().stream()
                .filter(node -> !bodies.contains(node))
                .toList();
        List<String> order = new ArrayList<>(bodies);
        order.addAll(junctions);
        Map<String, Integer> index = new HashMap<>();
        for (String node : order) {
            index.put(node, index.size());
        }
        joulesPerKelvin = bodies.stream().mapToDouble(from.nodes::get).toArray();
        wattsPerKelvinToAir = new double[order.size()];
        double[][] conductance = new double[order.size()][order.size()];
        for (Link link : from.links) {
            int one = index.get(link.from());
            double watts = 1 / link.kelvinPerWatt();
            conductance[one][one] += watts;
            if (link.to() == null) {
                wattsPerKelvinToAir[one] += watts;
            } else {
                int other = index.get(link.to());
                conductance[other][other] += watts;
                conductance[one][other] -= watts;
                conductance[other][one] -= watts;
            }
        }
        int[] heated = from.sources.values().stream().mapToInt(index::get).toArray();
        modes = new NetworkModes(conductance, joulesPerKelvin, heated);
        HeatModel.Builder builder = new HeatModel.Builder();
        from.sources.keySet().forEach(builder::source);
        modes.addTo(builder);
        from.points.forEach((point, node) -> modes.addPoint(builder, point, index.get(node)));
        model = builder.build();
    }

    /** Returns the modes of the network. */
    public HeatModel model() {
        return model;
    }

    /** Returns the ids of the nodes that have a heat capacity, in the order of {@link #risesKelvin}. */
    public List<String> bodies() {
        return bodies;
    }

    /** Returns the rise above the air of every body, in kelvins. */
    public double[] risesKelvin(double[] state) {
        return modes.rises(state);
    }

    /**
     * Returns the state in which the bodies have some temperatures.
     *
     * @param risesKelvin rise of each above the air in kelvins, in the order of {@link #bodies}
     */
    public double[] state(double[] risesKelvin) {
        if (risesKelvin.length != bodies.size()) {
            throw new IllegalArgumentException(
                    "risesKelvin has " + risesKelvin.length + " entries; there are " + bodies.size() + " bodies");
        }
        return modes.state(risesKelvin);
    }

    /**
     * Returns the state of this network in which its bodies have the temperatures that they have in another: the moment a fan is switched.
     *
     * @param other a network with the same bodies, in any order
     * @param otherState its state
     */
    public double[] carryFrom(HeatNetwork other, double[] otherState) {
        double[] known = other.risesKelvin(otherState);
        double[] rises = new double[bodies.size()];
        for (int i = 0; i < rises.length; i++) {
            int there = other.bodies.indexOf(bodies.get(i));
            if (there < 0) {
                throw new IllegalArgumentException("other has no body \"" + bodies.get(i)
                        + "\"; both networks need the same bodies, only their resistances may differ");
            }
            rises[i] = known[there];
        }
        return state(rises);
    }

    /** Returns the heat that the bodies hold above that at the air's temperature, in joules. */
    public double storedJoules(double[] state) {
        double[] rises = risesKelvin(state);
        double joules = 0;
        for (int i = 0; i < rises.length; i++) {
            joules += joulesPerKelvin[i] * rises[i];
        }
        return joules;
    }

    /**
     * Returns the heat that passes into the air, in watts.
     *
     * @param state the modes
     * @param watts power of each source at this moment
     */
    public double wattsToAir(double[] state, double[] watts) {
        double[] rises = modes.allRises(state, watts);
        double sum = 0;
        for (int i = 0; i < rises.length; i++) {
            sum += wattsPerKelvinToAir[i] * rises[i];
        }
        return sum;
    }

    /** A resistance between two nodes, or from one to the air when {@code to} is missing. */
    private record Link(String from, String to, double kelvinPerWatt) {}

    /** Puts a network together; used once. */
    public static final class Builder {
        /** Heat capacity of each node, 0 for none. */
        private final Map<String, Double> nodes = new LinkedHashMap<>();

        private final List<Link> links = new ArrayList<>();
        private final Map<String, String> sources = new LinkedHashMap<>();
        private final Map<HeatPoint, String> points = new LinkedHashMap<>();

        /** Adds a body with a heat capacity in joules per kelvin, above 0. */
        public Builder body(String id, double joulesPerKelvin) {
            return node(id, Checks.positive(joulesPerKelvin, "joulesPerKelvin"));
        }

        /** Adds a place without heat capacity, such as a surface between two layers. */
        public Builder junction(String id) {
            return node(id, 0);
        }

        /** Adds a resistance in kelvins per watt, above 0, between two nodes. */
        public Builder link(String from, String to, double kelvinPerWatt) {
            known(from);
            known(to);
            if (from.equals(to)) {
                throw new IllegalArgumentException("to is \"" + to + "\", the same as from; a link joins two nodes");
            }
            links.add(new Link(from, to, Checks.positive(kelvinPerWatt, "kelvinPerWatt")));
            return this;
        }

        /** Adds a resistance in kelvins per watt, above 0, from a node to the air. */
        public Builder toAir(String from, double kelvinPerWatt) {
            links.add(new Link(known(from), null, Checks.positive(kelvinPerWatt, "kelvinPerWatt")));
            return this;
        }

        /**
         * Adds bodies in a row, from the first, called {@code id.1}, on; the last one's resistance leads to a node that is there already.
         * Returns this builder.
         */
        public Builder ladder(String id, CauerLadder ladder, String to) {
            known(to);
            List<CauerStage> stages = ladder.stages();
            for (int i = 0; i < stages.size(); i++) {
                body(id + "." + (i + 1), stages.get(i).joulesPerKelvin());
            }
            for (int i = 0; i < stages.size(); i++) {
                String next = i + 1 < stages.size() ? id + "." + (i + 2) : to;
                link(id + "." + (i + 1), next, stages.get(i).kelvinPerWatt());
            }
            return this;
        }

        /** Adds what gives off heat into a node. */
        public Builder source(String id, String node) {
            Checks.named(id, "id");
            if (sources.putIfAbsent(id, known(node)) != null) {
                throw new IllegalArgumentException("source \"" + id + "\" is there twice");
            }
            return this;
        }

        /** Adds a place to watch: the temperature of a node. */
        public Builder point(HeatPoint point, String node) {
            points.put(Checks.present(point, "point"), known(node));
            return this;
        }

        /**
         * Returns the network.
         *
         * @throws IllegalArgumentException if there is no body, if a node has no way to the air, or if the time constants lie so far apart
         *     that double precision cannot hold them together
         */
        public HeatNetwork build() {
            if (nodes.values().stream().noneMatch(capacity -> capacity > 0)) {
                throw new IllegalArgumentException("nodes has no body; a network needs at least one heat capacity");
            }
            List<String> reached = new ArrayList<>();
            boolean more = true;
            while (more) {
                more = false;
                for (Link link : links) {
                    more |= reach(reached, link.from(), link.to() == null || reached.contains(link.to()));
                    more |= link.to() != null && reach(reached, link.to(), reached.contains(link.from()));
                }
            }
            for (String node : nodes.keySet()) {
                if (!reached.contains(node)) {
                    throw new IllegalArgumentException("node \"" + node
                            + "\" has no way to the air, so it would get hotter for ever; add a link to the air");
                }
            }
            return new HeatNetwork(this);
        }

        private static boolean reach(List<String> reached, String node, boolean now) {
            return now && !reached.contains(node) && reached.add(node);
        }

        private Builder node(String id, double joulesPerKelvin) {
            Checks.named(id, "id");
            if (nodes.putIfAbsent(id, joulesPerKelvin) != null) {
                throw new IllegalArgumentException("node \"" + id + "\" is there twice");
            }
            return this;
        }

        private String known(String node) {
            if (!nodes.containsKey(node)) {
                throw new IllegalArgumentException("node \"" + node + "\" is not there; add it first");
            }
            return node;
        }
    }
}
