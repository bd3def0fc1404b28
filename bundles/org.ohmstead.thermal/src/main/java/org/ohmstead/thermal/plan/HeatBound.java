// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How long a run has to idle at the least, in whatever order, for its heat to leave: the sum of all change-overs and
 * rests is never less.
 *
 * <p>Proof. Take a mode x with time constant tau, and z = x - (where idling leads it). Let zeta be above 0 and let a
 * potential be phi(z) = -tau ln z from zeta on, and below it the tangent there, phi(z) = -tau ln zeta - tau (z - zeta)
 * / zeta. It falls with z.
 *
 * <p>(1) While idling, dz/dt = -z / tau, so phi grows by 1 per second for z of at least zeta and by z / zeta, which is
 * less, below.
 *
 * <p>(2) A job of length d whose powers lead z to Z, at least 0, moves z to z' = Z + (z - Z) e, e = exp(-d / tau). The
 * loss phi(z) - phi(z') never grows with z: its slope is phi'(z) - e phi'(z'), which is (with z' at least e z) at most
 * 0 whether both are in the curved part (-tau/z + tau e/z'), both in the straight one (-tau (1 - e)/zeta), z in the
 * straight one alone (-tau/zeta + tau e/z', and z' is at least zeta) or z' alone (-tau/z + tau e/zeta, and zeta is
 * above z' and so above e z). So the loss is at least that at the greatest z from which the job can begin.
 *
 * <p>(3) That z is bounded: at the end of the job every point is at or below its limit, so z' is at most what the limit
 * leaves when all other modes are as low there as they can be (as high, where they cool), and z follows from z'. And z
 * is never above the greater of its start and the greatest of these ends, as idling lets it only fall.
 *
 * <p>(4) Summed over the run: phi(end) = phi(start) + growth while idling - losses, so that the idle time is at least
 * the sum of the least losses plus the least phi(end) - phi(start), where the end is the end of a job that nothing has
 * to follow. The first job begins no warmer than the start or, from below, than where idling leads; what it loses more
 * for that is added.
 *
 * <p>(5) Of some of the jobs, S, look at the stretch up to the end of the last of them, k. What other jobs are done in
 * it lose at least their least losses too, so that the idle time of the stretch is at least the losses of S, less those
 * of the others that are below 0, plus phi(end of k) - phi(start). It is tried for the jobs with the lowest of the ends
 * of (3), as many as one likes, as these have to begin coolest; and for each job with all that must precede it.
 *
 * <p>With zeta as high as z can get this is the balance of energy: heat put in, less what can be stored, leaves no
 * faster than at the limit. With a small zeta it counts for every job how long it takes to fall from its end to its
 * start. Each zeta and each mode gives a valid bound, the greatest of them counts. A mode that a job leads lower than
 * idling does is passed over.
 */
final class HeatBound {
    private static final int ZETAS = 40;
    private static final double SMALLEST_ZETA_RATIO = 1e-4;
    private static final double ROUNDING = 1e-9;
    private static final double ROUNDING_KELVIN = 1e-7;

    private final Plant plant;
    private final Precedence precedence;
    private final List<Potential> potentials = new ArrayList<>();
    private final double[][] mostAtBegin;
    private double idleSeconds;

    /** One mode and zeta, with the least loss of each job. */
    record Potential(int mode, double tau, double idle, double zeta, double[] loss, double end, double whole) {
        double at(double state) {
            double z = state - idle;
            return z >= zeta ? -tau * Math.log(z) : -tau * (Math.log(zeta) + (z - zeta) / zeta);
        }

        /** Returns the least idle time from a state on, for jobs whose least losses add up to a sum. */
        double idleSeconds(double[] state, double losses) {
            return losses + end - at(state[mode]);
        }
    }

    HeatBound(Plant plant, Precedence precedence) {
        this.plant = plant;
        this.precedence = precedence;
        mostAtBegin = new double[plant.modes()][];
        for (int mode = 0; mode < plant.modes(); mode++) {
            ofMode(mode);
        }
        potentials.sort(Comparator.comparingDouble(Potential::whole).reversed());
    }

    /** Returns the least that change-overs and rests can add up to, in seconds, at least 0. */
    double idleSeconds() {
        return Math.max(0, idleSeconds * (1 - ROUNDING) - ROUNDING);
    }

    /** Returns the potential that gives the best bound of the whole run; empty when heat bounds nothing. */
    List<Potential> best() {
        return potentials.isEmpty() ? List.of() : List.of(potentials.get(0));
    }

    /**
     * Returns how far above where idling leads a mode can be at the most when each job begins; empty when no point
     * tells, or when a job leads the mode lower than idling does.
     */
    Optional<double[]> mostAtBegin(int mode) {
        return Optional.ofNullable(mostAtBegin[mode]);
    }

    private void ofMode(int mode) {
        double idle = plant.idleTarget[mode];
        double[] endLimit = new double[plant.jobs];
        double most = plant.start[mode] - idle;
        for (int job = 0; job < plant.jobs; job++) {
            if (plant.target[job][mode] < idle) {
                return;
            }
            endLimit[job] = endLimit(job, mode) - idle;
            most = Math.max(most, endLimit[job]);
        }
        if (!Double.isFinite(most) || most <= 0) {
            return;
        }
        double[] begin = new double[plant.jobs];
        for (int job = 0; job < plant.jobs; job++) {
            double decay = plant.onDecay[job][mode];
            double lead = plant.target[job][mode] - idle;
            begin[job] = decay == 0 ? most : Math.min(most, (endLimit[job] - lead * (1 - decay)) / decay);
            begin[job] = Math.max(begin[job], plant.lowest(mode) - idle);
        }
        mostAtBegin[mode] = begin;
        for (int i = 0; i < ZETAS; i++) {
            double zeta = most * Math.pow(SMALLEST_ZETA_RATIO, (double) i / (ZETAS - 1));
            potentials.add(potential(mode, zeta, most, endLimit));
        }
    }

    private Potential potential(int mode, double zeta, double most, double[] endLimit) {
        double tau = plant.tauSeconds[mode];
        double idle = plant.idleTarget[mode];
        double[] loss = new double[plant.jobs];
        Potential shape = new Potential(mode, tau, idle, zeta, loss, 0, 0);
        double started = plant.start[mode];
        double beforeFirst = Math.max(started, idle) - idle;
        double sum = 0;
        double end = Double.POSITIVE_INFINITY;
        double first = Double.POSITIVE_INFINITY;
        for (int job = 0; job < plant.jobs; job++) {
            double decay = plant.onDecay[job][mode];
            double lead = plant.target[job][mode] - idle;
            double begin = mostAtBegin[mode][job];
            loss[job] = loss(shape, begin, lead, decay);
            sum += loss[job];
            if (precedence.canBeLast(job)) {
                end = Math.min(end, shape.at(idle + Math.min(most, endLimit[job])));
            }
            if (precedence.canBeFirst(job)) {
                first = Math.min(first, loss(shape, Math.min(begin, beforeFirst), lead, decay) - loss[job]);
            }
        }
        double whole = sum + first + end - shape.at(started);
        idleSeconds = Math.max(idleSeconds, Math.max(whole, ofSome(shape, most, endLimit)));
        return new Potential(mode, tau, idle, zeta, loss, end, whole);
    }

    /** The bounds by the jobs with the lowest ends, and by each job with those that must precede it. */
    private double ofSome(Potential shape, double most, double[] endLimit) {
        double[] loss = shape.loss();
        double start = shape.at(plant.start[shape.mode()]);
        double coolers = Arrays.stream(loss).filter(each -> each < 0).sum();
        double greatest = 0;
        double losses = coolers;
        for (int job : IntStream.range(0, plant.jobs)
                .boxed()
                .sorted(Comparator.comparingDouble(job -> endLimit[job]))
                .mapToInt(Integer::intValue)
                .toArray()) {
            losses += Math.max(0, loss[job]);
            double end = shape.at(shape.idle() + Math.min(most, endLimit[job]));
            double before = coolers + Math.max(0, loss[job]);
            for (int other = 0; other < plant.jobs; other++) {
                before += precedence.before(other, job) ? Math.max(0, loss[other]) : 0;
            }
            greatest = Math.max(greatest, Math.max(losses, before) + end - start);
        }
        return greatest;
    }

    private static double loss(Potential shape, double begin, double lead, double decay) {
        double end = lead + (begin - lead) * decay;
        return shape.at(shape.idle() + begin) - shape.at(shape.idle() + end);
    }

    /**
     * Returns the most that a mode can be at the end of a job without a point being above its limit; infinite when no
     * point tells.
     */
    private double endLimit(int job, int mode) {
        double least = Double.POSITIVE_INFINITY;
        for (int point = 0; point < plant.points(); point++) {
            double room = plant.limit[point] - plant.direct[job][point] + ROUNDING_KELVIN;
            double own = 0;
            for (int i = 0; i < plant.pointModes[point].length; i++) {
                int other = plant.pointModes[point][i];
                double weight = plant.weights[point][i];
                if (other == mode) {
                    own = weight;
                } else {
                    double from = weight > 0 ? plant.lowest(other) : plant.highest(other);
                    double target = plant.target[job][other];
                    room -= weight * (target + (from - target) * plant.onDecay[job][other]);
                }
            }
            if (own > 0) {
                least = Math.min(least, room / own);
            }
        }
        return least;
    }
}
