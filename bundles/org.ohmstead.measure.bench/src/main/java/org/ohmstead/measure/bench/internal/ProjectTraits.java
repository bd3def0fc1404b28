// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.List;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Mode;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SupplyType;

/**
 * What an amplifier is like, made from what a project says of it: its rails from its heat data or its ratings, what it loses with
 * current from ratings into several loads. An amplifier that nothing is known of gives some 50 W into 4 ohm.
 */
final class ProjectTraits {
    /** Power of a hard-clipped sine at 1 % distortion over that at the onset (closed form). */
    private static final double ONE_PERCENT_OVER_ONSET = 1.0475;

    private static final double USUAL_SUPPLY_VOLTS = 14.4;
    private static final double USUAL_SATURATION_VOLTS = 2;
    private static final double USUAL_LOSS_SHARE = 0.06;
    private static final double HIGHEST_LOSS_OHMS = 1;
    private static final double CLIPS_AT_DB = -8;

    private final Settings settings;
    private final Amplifier amplifier;
    private final AmplifierHeat heat;
    private final boolean ideal;
    private final List<Point> points;

    /**
     * A rating as one channel sees it.
     *
     * @param loadOhms what it works into
     * @param onsetVolts peak at which it begins to clip
     * @param supplyVolts at the terminals
     */
    private record Point(double loadOhms, double onsetVolts, double supplyVolts) {}

    ProjectTraits(Subject subject, Settings settings) {
        this.settings = settings;
        this.amplifier = subject.project().amplifier();
        this.heat = subject.project().heat().amplifier();
        this.ideal = settings.flag("ideal");
        this.points = points(amplifier);
    }

    AmplifierTraits traits() {
        return ideal ? ideal() : real();
    }

    private AmplifierTraits ideal() {
        // Supply volts do not matter: the rail is the clipping level, held from the lowest supply on.
        double clipVolts = settings.number("clipVolts");
        double lowest = 1e-3;
        return traits(clipVolts / lowest, lowest, 0, said("saturationVolts", 0), said("saturationOhms", 0), clipVolts);
    }

    private AmplifierTraits real() {
        double saturationVolts = said("saturationVolts", USUAL_SATURATION_VOLTS);
        double lossOhms = lossOhms(saturationVolts);
        boolean direct = amplifier.supplyType() == SupplyType.DIRECT;
        double ratio = direct ? 1 : railRatio(lossOhms, saturationVolts);
        ratio = said("railRatio", ratio);
        int working = Math.min(2, amplifier.channelCount());
        // A sine's rectified half waves take V / (pi R) from a rail, once for each channel.
        double railOhms = said("railOhms", direct ? 0 : lossOhms / 2 * Math.PI / working);
        double saturationOhms = said("saturationOhms", direct ? lossOhms : lossOhms / 2);
        double heldVolts = amplifier.supplyType() == SupplyType.REGULATED ? heldVolts() : Double.POSITIVE_INFINITY;
        double highLoad = points.stream().mapToDouble(Point::loadOhms).max().orElse(4);
        double supplyVolts =
                points.stream().mapToDouble(Point::supplyVolts).max().orElse(USUAL_SUPPLY_VOLTS);
        double clipVolts = (ratio * Math.min(supplyVolts, heldVolts) - saturationVolts) / (1 + lossOhms / highLoad);
        return traits(ratio, heldVolts, railOhms, saturationVolts, saturationOhms, Math.max(1, clipVolts));
    }

    private AmplifierTraits traits(
            double railRatio,
            double heldVolts,
            double railOhms,
            double saturationVolts,
            double saturationOhms,
            double clipVolts) {
        double sourcePeak = settings.number("sourceVolts") * Math.sqrt(2);
        double gainRatio = ideal ? 20 : clipVolts / (sourcePeak * Math.pow(10, CLIPS_AT_DB / 20));
        if (settings.number("gainDb") >= 0) {
            gainRatio = Math.pow(10, settings.number("gainDb") / 20);
        }
        double idleWatts =
                heat.idleWatts().map(Range::middle).orElse(USUAL_SUPPLY_VOLTS * (0.4 + 0.3 * amplifier.channelCount()));
        double efficiency = amplifier.supplyType() == SupplyType.DIRECT
                ? 1
                : heat.converterEfficiencyRatio().map(Range::middle).orElse(0.86);
        return new AmplifierTraits(
                amplifier.channelCount(),
                gainRatio,
                usually("mismatchDb", 0.15, 0),
                railRatio,
                heldVolts,
                railOhms,
                usually("railSeconds", 0.008, 0),
                saturationVolts,
                saturationOhms,
                usually("outputOhms", 0.03, 0),
                usually("currentLimitAmps", 1.6 * clipVolts / lowestOhms(), Double.POSITIVE_INFINITY),
                usually("kneeRatio", 0.01, 0),
                usually("crossoverVolts", 0.002, 0),
                usually("noiseVolts", 0.3e-3, 0),
                -usually("separationDb", 65, 400),
                usually("lowCornerHz", 5, 0),
                usually("highCornerHz", 60e3, Double.POSITIVE_INFINITY),
                heat.outputClass() == OutputClass.CLASS_D,
                said("efficiencyRatio", ideal ? 1 : efficiency),
                said("idleAmps", ideal ? 0 : idleWatts / USUAL_SUPPLY_VOLTS),
                -usually("gainLossDb", 0.02, 0) / 10,
                -usually("railLossRatio", 0.004, 0) / 10,
                usually("cutOutCelsius", 95, Double.POSITIVE_INFINITY));
    }

    private double said(String id, double otherwise) {
        return SimulationSettings.said(settings, id, otherwise);
    }

    private double usually(String id, double usual, double onIdealBench) {
        return said(id, ideal ? onIdealBench : usual);
    }

    private double lowestOhms() {
        double rated = points.stream().mapToDouble(Point::loadOhms).min().orElse(4);
        return Math.min(rated, amplifier.lowestLoadOhms(Mode.STEREO).orElse(rated));
    }

    /** A regulated converter is taken to hold its rails from a volt and a half below the lowest rated supply on. */
    private double heldVolts() {
        return points.stream().mapToDouble(Point::supplyVolts).min().orElse(12.5) - 1.5;
    }

    private double railRatio(double lossOhms, double saturationVolts) {
        if (heat.railVolts().isPresent()) {
            return heat.railVolts().getAsDouble() / heat.railSupplyVolts().orElse(USUAL_SUPPLY_VOLTS);
        }
        double ratio = points.stream()
                .mapToDouble(point -> railOverSupply(point, lossOhms, saturationVolts))
                .average()
                .orElse((Math.sqrt(2 * 4 * usualWatts()) * (1 + lossOhms / 4) + saturationVolts) / USUAL_SUPPLY_VOLTS);
        return amplifier.supplyType() == SupplyType.REGULATED ? ratio * USUAL_SUPPLY_VOLTS / heldVolts() : ratio;
    }

    /** A guess from the fuses: 55 % of what they pass, shared by the channels. */
    private double usualWatts() {
        double fuseAmps = amplifier.totalFuseAmps();
        return fuseAmps > 0 ? 0.55 * USUAL_SUPPLY_VOLTS * fuseAmps / amplifier.channelCount() : 50;
    }

    private static double railOverSupply(Point point, double lossOhms, double saturationVolts) {
        return (point.onsetVolts() * (1 + lossOhms / point.loadOhms()) + saturationVolts) / point.supplyVolts();
    }

    /** The resistance with which ratings into several loads agree best on the rails. */
    private double lossOhms(double saturationVolts) {
        double low = points.stream().mapToDouble(Point::loadOhms).min().orElse(4);
        double high = points.stream().mapToDouble(Point::loadOhms).max().orElse(4);
        if (high < 1.2 * low) {
            return USUAL_LOSS_SHARE * low;
        }
        double best = 0;
        double least = Double.MAX_VALUE;
        for (double ohms = 0; ohms <= HIGHEST_LOSS_OHMS; ohms += 0.005) {
            double sum = 0;
            double squares = 0;
            for (Point point : points) {
                double ratio = railOverSupply(point, ohms, saturationVolts);
                sum += ratio;
                squares += ratio * ratio;
            }
            double spread = squares * points.size() / (sum * sum);
            if (spread < least) {
                least = spread;
                best = ohms;
            }
        }
        return best;
    }

    private static List<Point> points(Amplifier amplifier) {
        return amplifier.ratings().stream()
                .filter(rating -> rating.kind() == PowerKind.CONTINUOUS)
                .map(ProjectTraits::point)
                .toList();
    }

    private static Point point(Rating rating) {
        double onset = Math.sqrt(2 * rating.loadOhms() * rating.powerWatts() / ONE_PERCENT_OVER_ONSET);
        double share = rating.mode() == Mode.BRIDGED ? 0.5 : 1;
        return new Point(share * rating.loadOhms(), share * onset, rating.supplyVolts());
    }
}
