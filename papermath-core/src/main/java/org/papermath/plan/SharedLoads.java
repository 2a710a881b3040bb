package org.papermath.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.papermath.engine.PreparingStock;

/**
 * Loads of the beater that several orders share. The stuff is divided by weight as it comes from the beater: the first order
 * takes of the first loads, the next goes on where it ends, so that one load at most is divided between two.
 */
final class SharedLoads {
    private final String stuff;
    private final PreparingStock.Setting whole;
    /** Oven-dry fibre each order wants, in the order they take it. */
    private final Map<String, Double> wanted;
    /** The tasks of the loads, run by run: of fibres beaten apart every order takes of each run. */
    private final List<List<String>> runs = new ArrayList<>();

    SharedLoads(String stuff, PreparingStock.Setting whole, Map<String, Double> wanted) {
        this.stuff = stuff;
        this.whole = whole;
        this.wanted = new LinkedHashMap<>(wanted);
    }

    String stuff() {
        return stuff;
    }

    PreparingStock.Setting whole() {
        return whole;
    }

    boolean isFirst(String order) {
        return wanted.keySet().iterator().next().equals(order);
    }

    /** The part an order takes. */
    double part(String order) {
        return Objects.requireNonNull(wanted.get(order)) / all();
    }

    private double all() {
        return wanted.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    void beaten(List<String> run) {
        runs.add(List.copyOf(run));
    }

    /** The loads an order takes of. */
    List<String> of(String order) {
        double before = 0;
        for (Map.Entry<String, Double> one : wanted.entrySet()) {
            if (one.getKey().equals(order)) {
                break;
            }
            before += one.getValue() / all();
        }
        List<String> loads = new ArrayList<>();
        for (List<String> run : runs) {
            int from = (int) Math.floor(before * run.size() + 1e-9);
            int to = (int) Math.ceil((before + part(order)) * run.size() - 1e-9);
            loads.addAll(run.subList(Math.min(from, run.size() - 1), Math.min(Math.max(to, from + 1), run.size())));
        }
        return loads;
    }
}
