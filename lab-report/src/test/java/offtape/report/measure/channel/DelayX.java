package offtape.report.measure.channel;
import java.util.*;
class DelayX {
  static void one(String name, String members){
    long t0=System.nanoTime();
    var run=Bench.run(members); var ret=Bench.play(run);
    var d=Bench.delay(ret); double truth=run.truth().channels().interchannelDelay();
    System.out.printf("%-44s truth %+9.4f found %+9.4f err %+.4f u %.4f resp %+.3f±%.3f resid %.3f opp %b %d ms%n",name,truth,d.delay().value(),d.delay().value()-truth,d.delay().uncertainty(),d.responseDelay().value(),d.responseDelay().uncertainty(),d.phaseResidual().value(),d.opposite(),(System.nanoTime()-t0)/1000000);
  }
  public static void main(String[] a){
    for(double am: new double[]{0,1,-5,15,-32,32}) one("az "+am,"'heads':{'azimuthArcMinutes':"+am+"},'hiss':{'levelDb':-58}");
    one("az 32 inverted right","'heads':{'azimuthArcMinutes':32},'hiss':{'levelDb':-58},'electronics':{'right':{'polarityInverted':true}}");
    one("az -32 inverted left","'heads':{'azimuthArcMinutes':-32},'hiss':{'levelDb':-58},'electronics':{'left':{'polarityInverted':true}}");
    one("az -1 inverted, leak","'heads':{'azimuthArcMinutes':-1},'crosstalk':{'leftToRightDb':-40,'rightToLeftDb':-45},'electronics':{'left':{'polarityInverted':true}}");
    one("LP 15k/18k o2","'heads':{'azimuthArcMinutes':1},'hiss':{'levelDb':-58},'electronics':{'left':{'upperEdgeHz':18000},'right':{'upperEdgeHz':15000}}");
    one("LP 12k/18k o2","'heads':{'azimuthArcMinutes':1},'hiss':{'levelDb':-58},'electronics':{'left':{'upperEdgeHz':18000},'right':{'upperEdgeHz':12000}}");
    one("LP 9k/18k o2","'heads':{'azimuthArcMinutes':1},'hiss':{'levelDb':-58},'electronics':{'left':{'upperEdgeHz':18000},'right':{'upperEdgeHz':9000}}");
    one("LP 17.5k/18k o2","'heads':{'azimuthArcMinutes':1},'hiss':{'levelDb':-58},'electronics':{'left':{'upperEdgeHz':18000},'right':{'upperEdgeHz':17500}}");
    one("LP 17.5k/18k o2 clean","'heads':{'azimuthArcMinutes':1},'electronics':{'left':{'upperEdgeHz':18000},'right':{'upperEdgeHz':17500}}");
    one("LP 15k/18k o1","'heads':{'azimuthArcMinutes':1},'hiss':{'levelDb':-58},'electronics':{'left':{'upperEdgeHz':18000,'upperOrder':1},'right':{'upperEdgeHz':15000,'upperOrder':1}}");
    one("HP 30/60 o2","'heads':{'azimuthArcMinutes':1},'hiss':{'levelDb':-58},'electronics':{'left':{'lowerEdgeHz':30},'right':{'lowerEdgeHz':60}}");
    one("HP 30/60 + LP 15/18","'heads':{'azimuthArcMinutes':1},'hiss':{'levelDb':-58},'electronics':{'left':{'lowerEdgeHz':30,'upperEdgeHz':15000},'right':{'lowerEdgeHz':60,'upperEdgeHz':18000}}");
    if(a.length==0) for(String hiss: new String[]{"-58","-45","-80"}){
      int in=0,n=100; double s=0,u=0,w=0; 
      for(int i=0;i<n;i++){ var run=Bench.run("'seed':"+i+",'heads':{'azimuthArcMinutes':"+(-20+0.4*i)+"},'hiss':{'levelDb':"+hiss+"}"); var d=Bench.delay(Bench.play(run)); double e=d.delay().value()-run.truth().channels().interchannelDelay(); in+=Math.abs(e)<=d.delay().uncertainty()?1:0; s+=e*e; u+=d.delay().uncertainty()/n; w=Math.max(w,Math.abs(e)); }
      System.out.printf("hiss %s coverage %d of %d rms err %.4f worst %.4f mean U %.4f%n",hiss,in,n,Math.sqrt(s/n),w,u);
    }
  }
}
