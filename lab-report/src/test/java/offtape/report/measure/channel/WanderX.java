package offtape.report.measure.channel;
import java.util.*;
import offtape.core.programme.*;
import offtape.report.measure.sweep.Leakage;
class WanderX {
  static InterchannelDelay whole(double us, boolean opp){ var q=offtape.core.unit.Quantity.known(us,"µs",0.1); var z=offtape.core.unit.Quantity.known(0,"µs",0.1); return new InterchannelDelay(q,z,z,opp);}
  static void one(String n, LongTone t, double mean, double peak, boolean opp){
    var none=new Leakage(Leakage.Leak.NONE, Leakage.Leak.NONE);
    var w=DelayWander.of(t.play(4),none,whole(mean,opp));
    double tm=w.trace()==null?Double.NaN:Arrays.stream(w.trace().microseconds()).average().orElse(0);
    System.out.printf("%-40s rms %s (truth %.4f) pp %s (truth %.3f) trace mean %.4f (%.1f)%n",n,w.rms().isKnown()?String.format("%.4f±%.4f",w.rms().value(),w.rms().uncertainty()):w.rms().reason(),peak/Math.sqrt(2),w.peakToPeak().isKnown()?String.format("%.4f±%.4f",w.peakToPeak().value(),w.peakToPeak().uncertainty()):"-",2*peak,tm,mean);
  }
  public static void main(String[] a){
    one("clean none",new LongTone(48000,3150,20).skew(30,0,1),30,0,false);
    one("hiss -58 none",new LongTone(48000,3150,60).hiss(-58).skew(30,0,1),30,0,false);
    one("hiss -45 wow .5 none",new LongTone(48000,3150,60).hiss(-45).wow(0.5,0.7).skew(30,0,1),30,0,false);
    one("hiss -58 200us flutter",new LongTone(48000,3150,60).hiss(-58).wow(0.3,4).skew(200,0,1),200,0,false);
    one("1 us 0.5 Hz",new LongTone(48000,3150,60).hiss(-58).wow(0.3,4).skew(10,1,0.5),10,1,false);
    one("0.01 us 2 Hz",new LongTone(48000,3150,60).hiss(-58).wow(0.3,4).skew(10,0.01,2),10,0.01,false);
    one("5 us 7 Hz inverted -180",new LongTone(48000,3150,30).hiss(-58).rightGain(-1).skew(-180,5,7),-180,5,true);
    one("300 us mean 10 kHz 20us",new LongTone(48000,10000,20).hiss(-58).skew(300,20,1),300,20,false);
    one("0.5us am 1.5 dropouts",new LongTone(48000,3150,40).hiss(-58).level(1.5,2).damage(new LongTone.Damage(0,5,0.3,20,0.002)).damage(new LongTone.Damage(1,15,0.1,30,0)).skew(10,0.5,1),10,0.5,false);
    one("none, dropouts",new LongTone(48000,3150,40).hiss(-58).level(1.5,2).damage(new LongTone.Damage(0,5,0.3,20,0.002)).damage(new LongTone.Damage(1,15,0.1,30,0)).skew(10,0,1),10,0,false);
    int f=0; double mx=0; for(int s=0;s<40;s++){ var w=DelayWander.of(new LongTone(44100,3150,6).hiss(-50).wow(0.3,1).skew(20,0,1).play(s),new Leakage(Leakage.Leak.NONE, Leakage.Leak.NONE),whole(20,false)); if(w.rms().isKnown()){f++;mx=Math.max(mx,w.rms().value());}} System.out.println("invented in 40 short: "+f+" max "+mx);
  }
}
