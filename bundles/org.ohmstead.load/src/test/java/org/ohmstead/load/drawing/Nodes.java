// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** Nodes joined by resistors: which places are one node, and what lies between two of them by Kirchhoff's laws. */
final class Nodes<T> {
    private final Map<T, T> parents = new HashMap<>();
    private final Map<T, Map<T, Double>> siemens = new LinkedHashMap<>();

    void join(T one, T other) {
        parents.put(root(one), root(other));
    }

    T root(T place) {
        T parent = parents.getOrDefault(place, place);
        return parent.equals(place) ? place : root(parent);
    }

    /** To be called after all joining. */
    void resistor(T one, T other, double ohms) {
        add(root(one), root(other), 1 / ohms);
        add(root(other), root(one), 1 / ohms);
    }

    private void add(T one, T other, double conductance) {
        siemens.computeIfAbsent(one, key -> new LinkedHashMap<>()).merge(other, conductance, Double::sum);
    }

    int size() {
        return siemens.size();
    }

    /** Returns the resistance between two nodes: one ampere in at the first, the volts there, by Gaussian elimination. */
    double ohms(T from, T to) {
        T ground = root(to);
        Map<T, Integer> index = new LinkedHashMap<>();
        siemens.keySet().stream().filter(node -> !node.equals(ground)).forEach(node -> index.put(node, index.size()));
        int n = index.size();
        double[][] rows = new double[n][n + 1];
        siemens.forEach((node, others) -> others.forEach((other, conductance) -> {
            if (index.containsKey(node)) {
                rows[index.get(node)][index.get(node)] += conductance;
                if (index.containsKey(other)) {
                    rows[index.get(node)][index.get(other)] -= conductance;
                }
            }
        }));
        int at = index.get(root(from));
        rows[at][n] = 1;
        for (int pivot = 0; pivot < n; pivot++) {
            for (int row = 0; row < n; row++) {
                double factor = row == pivot ? 0 : rows[row][pivot] / rows[pivot][pivot];
                for (int column = pivot; factor != 0 && column <= n; column++) {
                    rows[row][column] -= factor * rows[pivot][column];
                }
            }
        }
        return rows[at][n] / rows[at][at];
    }
}
