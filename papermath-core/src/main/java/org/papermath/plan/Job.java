package org.papermath.plan;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Role;
import org.papermath.shape.EnvelopeStyle;

/**
 * An order and a studio in plain numbers of coherent SI, with every assumption they touch in a slot of one array. Made
 * once; the {@link Engine} then runs on arrays of values of these slots.
 */
final class Job {
    /** Marks an assumption that is not there. */
    static final int NONE = -1;

    final List<Assumption> assumptions;
    final double[] likely;
    final double[] low;
    final double[] high;
    /** The slots that are varied in bands. */
    final int[] varied;

    final Slots.General general;
    final BatchJob[] batches;
    final PieceJob[] pieces;

    // The studio.
    double scale;
    double fineScale;
    double jug;
    boolean hasBeater;
    double trough;
    double ratedLoad;
    boolean hasVat;
    double vatVolume;
    /** Inside sides of the vat; not a number where they are not known. */
    double vatWidth = Double.NaN;
    double vatLength = Double.NaN;
    double vatCelsius;
    double waterDensity;
    double waterViscosity;
    double[] mouldWidth = {};
    double[] mouldHeight = {};
    boolean hasPress;
    double weakest;
    double platenWidth;
    double platenLength;
    double daylight = Double.NaN;
    boolean hasFelts;
    double feltWidth;
    double feltLength;
    double feltDry;
    int felts;
    double roomCelsius;
    double roomHumidity;
    double roomVolume;
    double roomRatio;
    double roomSaturated;
    double referenceCelsius;
    double referenceHumidity;

    /** One fibre of a recipe: its share, and the slots of what is known of it. */
    static final class FibreJob {
        double share;
        double onHand;
        int moisture;
        int rate;
        int exponent;
        int retentionUnbeaten;
        int retentionWell;
        int retentionLong;
        int drainabilityWell;
        int drainabilityLong;
        int densityUnbeaten;
        int densityLong;
        int densityLight;
        int shrinkInitial;
        int shrinkLimit;
        int shrinkTime;
        int monolayer;
        int energy;
        int bulk;
        int firstPass;

        boolean hasBeatenDensity() {
            return densityUnbeaten != NONE && densityLong != NONE;
        }

        boolean hasDensity() {
            return hasBeatenDensity() || densityLight != NONE;
        }
    }

    /** One recipe, for all the pieces made from it. */
    static final class BatchJob {
        String name = "";
        FibreJob[] fibres = {};
        int shrinkSlope;
        int shrinkIntercept;
        int shrinkOnset;
        int direction;
        int densityTime;
        double beating;
        double drainability = Double.NaN;
        /** Whether it is known how fast every fibre beats, or beating does not matter. */
        boolean kinetics = true;
        double[] dose = {};
        double[] active = {};
        int[] additiveRetention = {};
        boolean[] particle = {};
        double beaterConsistency;
        double stockConsistency;
        double vatConsistency;
        double sizeBath = Double.NaN;
        int[] pieces = {};
    }

    /** One piece of the order. */
    static final class PieceJob {
        String name = "";
        int index;
        int batch;
        int ordered;
        int wanted;
        int trials;
        double width = Double.NaN;
        double height = Double.NaN;
        double grammage = Double.NaN;
        double caliper = Double.NaN;
        double sampleMass = Double.NaN;
        double sampleArea = Double.NaN;
        int folds;
        boolean deckleEdge;
        double trim;
        double gap;
        int envelopeFor = NONE;
        @Nullable EnvelopeStyle style;
        int inserts = 1;
        double clearance;
        double sideFlap;
        double flapShare;
        double seam;
        int dryerKind;
        double freeAir;
        int spur = 1;
        int capacity;
        int sheetTimeSmall;
        int sheetTimeLarge;
        int rejectForming;
        int rejectPressing;
        int rejectDrying;
        int rejectSizing;
        int rejectCutting;
        int rejectFolding = NONE;
        int restraint = NONE;
        int criticalRatio = NONE;
        int fanEfficiency = NONE;
        int deliveredShare = NONE;
        int filmStill = NONE;
        int radiative = NONE;
        int lewis = NONE;
        int loftTail = NONE;
        int blotterKept = NONE;
        int blotterHours = NONE;
        int measuredAlong = NONE;
        int measuredAcross = NONE;
        int measuredSolids = NONE;
        int measuredMoisture = NONE;
        int measuredDensity = NONE;
    }

    /** Kinds of dryer, as plain numbers. */
    static final int NO_DRYER = 0;
    static final int FAN_STACK = 1;
    static final int BOARDS = 2;
    static final int LOFT = 3;
    static final int BLOTTERS = 4;

    Job(Slots slots, Slots.General general, BatchJob[] batches, PieceJob[] pieces) {
        this.assumptions = List.copyOf(slots.list());
        this.general = general;
        this.batches = batches;
        this.pieces = pieces;
        int n = assumptions.size();
        this.likely = new double[n];
        this.low = new double[n];
        this.high = new double[n];
        for (int i = 0; i < n; i++) {
            Assumption assumption = assumptions.get(i);
            likely[i] = assumption.likelySi();
            low[i] = assumption.lowSi();
            high[i] = assumption.highSi();
        }
        // By key, so that sums over them do not depend on the order they are looked up in.
        this.varied = IntStream.range(0, n)
                .filter(i -> assumptions.get(i).role() == Role.PHYSICAL && low[i] < high[i]).boxed()
                .sorted(Comparator.comparing(i -> assumptions.get(i).key())).mapToInt(Integer::intValue).toArray();
    }
}
