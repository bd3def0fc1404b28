// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;

/** Made-up plans. */
final class RandomTask {
    private RandomTask() {}

    /** How a job is wired. */
    record Wiring(int mode, int load, int supply) {
        double secondsTo(Wiring other) {
            double seconds = mode != other.mode ? 90 : 0;
            seconds += load != other.load ? 60 : 0;
            return seconds > 0 ? seconds : supply != other.supply ? 10 : 0;
        }
    }

    static ScheduleTask of(SplittableRandom random, TestPlant plant, int count) {
        List<HeatJob> jobs = new ArrayList<>();
        List<Wiring> wirings = new ArrayList<>();
        double hotness = 0.4 + 0.8 * random.nextDouble();
        for (int i = 0; i < count; i++) {
            List<Double> watts = new ArrayList<>();
            for (int source = 0; source < plant.sources; source++) {
                watts.add(source == 0 ? 5 + hotness * 150 * random.nextDouble() : 100 * random.nextDouble());
            }
            Map<String, Double> ripple = new HashMap<>();
            if (random.nextInt(3) == 0) {
                ripple.put("p1", 4 * random.nextDouble());
            }
            wirings.add(new Wiring(random.nextInt(2), random.nextInt(3), random.nextInt(3)));
            double wish = random.nextInt(8) == 0 ? 30 * random.nextDouble() : 0;
            jobs.add(new HeatJob("s" + i, 10 + 50 * random.nextDouble(), watts, ripple, 200, wish, random.nextInt(5)));
        }
        List<Before> pairs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            for (int k = 0; k < count; k++) {
                if (wirings.get(i).mode() < wirings.get(k).mode()) {
                    pairs.add(new Before(i, k));
                }
            }
        }
        List<Double> idle = new ArrayList<>(Collections.nCopies(plant.sources, 0.0));
        idle.set(0, 4 * random.nextDouble());
        List<Double> start = new ArrayList<>();
        boolean warm = random.nextBoolean();
        for (int mode = 0; mode < plant.tau.size(); mode++) {
            start.add(warm ? 20 * random.nextDouble() : 0.0);
        }
        return new ScheduleTask(
                plant.model(),
                18 + 10 * random.nextDouble(),
                5 * random.nextDouble(),
                jobs,
                idle,
                20,
                ChangeOvers.of(wirings, Wiring::secondsTo, wiring -> 0),
                pairs,
                start,
                Optional.empty());
    }
}
