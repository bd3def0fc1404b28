// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.Arrays;

/** The shortest path that visits one place of each group, by going through the subsets of groups visited (Held and Karp). */
final class ShortestPath {
    private static final int FAR = Integer.MAX_VALUE / 4;

    private ShortestPath() {}

    /** Returns the length of the shortest path through all places. */
    static int length(int[][] distances) {
        int[] groups = new int[distances.length];
        Arrays.setAll(groups, place -> place);
        int[] path = throughGroups(distances, groups, groups.length);
        int length = 0;
        for (int step = 1; step < path.length; step++) {
            length += distances[path[step - 1]][path[step]];
        }
        return length;
    }

    /**
     * Returns the places on the path.
     *
     * @param distances between places
     * @param groupOf group of each place
     * @param groups number of groups, each with a place
     */
    static int[] throughGroups(int[][] distances, int[] groupOf, int groups) {
        int places = distances.length;
        int[][] lengths = new int[1 << groups][places];
        for (int visited = 1; visited < lengths.length; visited++) {
            for (int place = 0; place < places; place++) {
                lengths[visited][place] = length(lengths, distances, groupOf, visited, place);
            }
        }
        int[] path = new int[groups];
        int visited = lengths.length - 1;
        int place = nearest(lengths[visited], new int[places]);
        for (int step = groups - 1; step >= 0; step--) {
            path[step] = place;
            visited &= ~(1 << groupOf[place]);
            place = visited == 0 ? place : nearest(lengths[visited], distances[place]);
        }
        return path;
    }

    private static int length(int[][] lengths, int[][] distances, int[] groupOf, int visited, int place) {
        int own = 1 << groupOf[place];
        if ((visited & own) == 0) {
            return FAR;
        }
        if (visited == own) {
            return 0;
        }
        int[] before = lengths[visited & ~own];
        int last = nearest(before, distances[place]);
        return Math.min(FAR, before[last] + distances[place][last]);
    }

    private static int nearest(int[] lengths, int[] distances) {
        int nearest = 0;
        for (int place = 1; place < lengths.length; place++) {
            if (lengths[place] + distances[place] < lengths[nearest] + distances[nearest]) {
                nearest = place;
            }
        }
        return nearest;
    }
}
